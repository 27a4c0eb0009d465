/** Plain data with marks in it, as it goes over the wire: each mark is a place in a document by then. */
import type { Mark } from "../drawings/shapes.ts";

/** Lines and columns from zero; `last` is the last line of the block that stands there. */
export interface At {
  readonly line: number;
  readonly character: number;
  readonly last: number;
  /** Where it is in another document than the one that was asked about. */
  readonly uri?: string;
}

/** The same data with places for marks. */
export type Placed<T> = T extends Mark
  ? At
  : T extends readonly (infer One)[]
    ? readonly Placed<One>[]
    : T extends object
      ? { readonly [Name in keyof T]: Placed<T[Name]> }
      : T;

/** A mark that is nowhere any more goes missing, and what it stood for stays. */
export function placed<T>(value: T, at: (mark: Mark) => At | undefined): Placed<T> {
  return convert(value, at) as Placed<T>;
}

function convert(value: unknown, at: (mark: Mark) => At | undefined): unknown {
  if (Array.isArray(value)) return value.map((one) => convert(one, at));
  if (typeof value !== "object" || value === null) return value;
  if (isMark(value)) return at(value);
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, convert(one, at)]));
}

const isMark = (value: object): value is Mark => "segment" in value && "offset" in value;
