import { memoByObject } from "../circuit/kept.ts";
import { valueAt, valuesOf } from "../model/fact-values.ts";
import type { Board } from "../model/file.ts";
import type { Absent, Fact, Facts } from "../model/values.ts";
import { isAbsent } from "../model/values.ts";

/** A test that was not made, or is said not to apply. */
export interface AbsenceAt {
  readonly fact: Fact;
  /** The argument it stands for: `L-E`, or `value` where a statement has one only. */
  readonly param: string;
  readonly value: Absent;
}

export function absencesIn(facts: Facts): AbsenceAt[] {
  const found: AbsenceAt[] = [];
  collect(facts, found);
  return found;
}

/** Nearly every circuit has none, so nothing is made until one is met. */
function collect(facts: Facts, found: AbsenceAt[]): void {
  for (const fact of facts.list) {
    for (const param in fact.args) {
      const value = valueAt(fact, param);
      if (isAbsent(value)) found.push({ fact, param, value });
    }
    if (fact.inner) collect(fact.inner, found);
  }
}

/** One sign may stand for several arguments of a line: `insulation 500 V LIM "…"`. It is one thing not done. */
export function distinctAbsences(facts: Facts): AbsenceAt[] {
  const all = absencesIn(facts);
  if (all.length < 2) return all;
  const seen = new Set<string>();
  return all.filter(({ value }) => {
    const key = `${value.start} ${value.end}`;
    return !seen.has(key) && seen.add(key);
  });
}

/** How many things of a line are limited. */
export function limitationsOf(fact: Fact): number {
  return new Set(valuesOf(fact).flatMap((value) => (isAbsent(value) && value.absent === "LIM" ? [value.start] : [])))
    .size;
}

/** Whether the sign stands for more of its line than this one argument. */
export const isOfWholeLine = ({ fact, value }: AbsenceAt): boolean =>
  valuesOf(fact).filter(({ start }) => start === value.start).length > 1;

/** What of a board's own lines and of its ways was not tested, by the block it stands in; most have none. */
export const absencesOnBoard = memoByObject(({ head, ways }: Board) =>
  [head.facts, ...ways.map((way) => way.facts)].flatMap((facts: Facts) => {
    const absences = distinctAbsences(facts);
    return absences.length > 0 ? [{ facts, absences }] : [];
  }),
);
