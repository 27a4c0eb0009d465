import type { Absent, AnyValue, Fact, Facts } from "../model/values.ts";
import { isAbsent } from "../model/values.ts";

/** A test that was not made, or is said not to apply. */
export interface AbsenceAt {
  readonly fact: Fact;
  /** The argument it stands for: `L-E`, or `value` where a statement has one only. */
  readonly param: string;
  readonly value: Absent;
}

export function absencesIn(facts: Facts): AbsenceAt[] {
  return facts.list.flatMap((fact) => {
    const own = Object.entries(fact.args).flatMap(([param, value]) =>
      ([value].flat() as (AnyValue | undefined)[]).flatMap((one) =>
        isAbsent(one) ? [{ fact, param, value: one }] : [],
      ),
    );
    return fact.inner ? [...own, ...absencesIn(fact.inner)] : own;
  });
}

/** One sign may stand for several arguments of a line: `insulation 500 V LIM "…"`. It is one thing not done. */
export function distinctAbsences(facts: Facts): AbsenceAt[] {
  const seen = new Set<string>();
  return absencesIn(facts).filter(({ value }) => {
    const key = `${value.start} ${value.end}`;
    return !seen.has(key) && seen.add(key);
  });
}
