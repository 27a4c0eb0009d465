/** What was read on each of three lines beside the reading that counts. */
import { valueAt } from "../model/fact-values.ts";
import { type Fact, isAbsent, type Quantity } from "../model/values.ts";

export const threeLines = ["L1", "L2", "L3"] as const;
export type Line = (typeof threeLines)[number];

interface LineReading {
  readonly name: string;
  readonly fact: Fact;
  readonly reading: Quantity;
}

/** Exact readings only: one off the scale is no highest. */
export const readOnLines = (fact: Fact | undefined): LineReading[] =>
  threeLines.flatMap((line) => {
    const read = valueAt(fact, line);
    const exact = fact && read && !isAbsent(read) && "sign" in read && read.sign === "=";
    return exact ? [{ name: `Line ${line}`, fact, reading: read }] : [];
  });
