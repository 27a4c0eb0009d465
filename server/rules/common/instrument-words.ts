import type { NamedUse } from "../../readings/instruments.ts";
import { type Related, valueSpot } from "../frame/rule.ts";

/** An instrument is reported once, however many tests it was used for. */
export const sameTests = (others: readonly unknown[]): string =>
  others.length === 0 ? "" : ` and ${others.length === 1 ? "one other" : `${others.length} others`}`;

/** Where else it was used. */
export const usedToo = (others: readonly NamedUse[]): Related[] =>
  others.map(({ day, name }) => ({ spot: valueSpot(day.header, name), message: `Used on ${day.on.value}.` }));
