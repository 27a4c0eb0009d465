/** What stands in one cell of a schedule: a reading, what takes its place, or a blank for it. */

import { unitOf } from "../../../grammar/units.ts";
import { plain } from "../../calc/result.ts";
import { valueAt } from "../../model/fact-values.ts";
import { type AnyValue, type Fact, isAbsent, type Quantity } from "../../model/values.ts";
import type { Fill } from "../common/paper-kinds.ts";
import type { Cell } from "../setting/document.ts";

/** A cell before its note has a number. */
export interface Noted extends Cell {
  readonly note?: string;
}

/** How a reading that is not there is shown: it is required by now, still to be made, or not one of this circuit. */
export type Want = "missing" | "blank" | "none";

export const said = (text: string): Noted => ({ text, kind: text === "" ? "nothing" : "said" });
export const nothing: Noted = { text: "", kind: "nothing" };
export const notApplicable: Noted = { text: "N/A", kind: "absent" };

const blank: Noted = { text: "", kind: "blank" };

/** The number of a quantity in a unit of the column, as it was written where the units agree. */
function figureIn({ segment }: Pick<Fact, "segment">, quantity: Quantity, unit: string): string {
  const sign = quantity.sign === "=" ? "" : quantity.sign;
  if (unitOf(quantity.unit)?.symbol === unit) {
    const number = /\d[\d.]*/.exec(segment.text.slice(quantity.start, quantity.end))?.[0];
    if (number !== undefined) return `${sign}${number}`;
  }
  const value = quantity.value / (unitOf(unit)?.factor ?? 1);
  return `${sign}${plain(value, value < 1 ? 3 : 2)}`;
}

/** A reading, or what takes its place. */
export function readingCell(fact: Fact | undefined, name: string, unit: string, want: Want, fill: Fill): Noted {
  const read = fact && recordedCell(fact, valueAt(fact, name), unit);
  if (fill === "filled") return read ?? { missing, blank, none: notApplicable }[want];
  if (read?.kind === "absent" && read.text === "N/A") return read;
  if (!read && want === "none") return notApplicable;
  return fill === "last" && read ? { ...blank, last: read.text } : blank;
}

/** The time an RCD took, or that it did not trip. */
export const tripCell = (fact: Fact | undefined, want: Want, fill: Fill): Noted =>
  readingCell(fact, fact?.args.noTrip ? "noTrip" : "time", "ms", want, fill);

const missing: Noted = { text: "missing", kind: "missing" };

function recordedCell(fact: Fact, value: AnyValue | undefined, unit: string): Noted | undefined {
  if (!value || Array.isArray(value)) return undefined;
  if (isAbsent(value)) return { text: value.absent, kind: "absent", ...(value.why ? { note: value.why } : {}) };
  if ("sign" in value) return { text: figureIn(fact, value, unit), ...origins[fact.provenance](fact) };
  if ("value" in value) return { text: verdicts[String(value.value)] ?? String(value.value), kind: "measured" };
  return undefined;
}

/** Words of a verdict as a schedule has them, where every figure has few millimetres. */
const verdicts: Readonly<Record<string, string>> = { ok: "✓", wrong: "✗", failed: "✗" };

type Origin = Pick<Noted, "kind" | "note">;

const origins: Readonly<Record<Fact["provenance"], (fact: Fact) => Origin>> = {
  measured: () => ({ kind: "measured" }),
  calculated: () => ({ kind: "calculated" }),
  declared: () => ({ kind: "declared", note: "declared, not measured" }),
  "from-record": ({ record }) => ({ kind: "declared", note: `from record${record ? ` ${record}` : ""}` }),
};
