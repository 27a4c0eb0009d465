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

/** Readings on single lines, off scale or not; bounds below which one lies are left out. */
export const readOnLines = (fact: Fact | undefined): LineReading[] =>
  allOnLines(fact).filter(({ reading }) => reading.sign !== "<");

/** Of single lines the bounds below which a reading lies. */
export const boundedOnLines = (fact: Fact | undefined): LineReading[] =>
  allOnLines(fact).filter(({ reading }) => reading.sign === "<");

const allOnLines = (fact: Fact | undefined): LineReading[] =>
  threeLines.flatMap((line) => {
    const read = valueAt(fact, line);
    return fact && read && !isAbsent(read) && "sign" in read ? [{ name: `line ${line}`, fact, reading: read }] : [];
  });
