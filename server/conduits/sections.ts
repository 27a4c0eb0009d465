/** The lengths of a conduit between its draw-in points. */
import { type Run, straightRun } from "../calc/containment.ts";
import { type Fact, type FactOf, innerOf } from "../model/values.ts";

export type ContainmentFact = FactOf<"board", "containment">;

/** A length between two draw-in points; what is not written is missing. */
export interface Section {
  readonly fact: Fact;
  readonly length: number | undefined;
  readonly bends: number | undefined;
}

/** Whether length and bends are known: a short run of which nothing more is stated is straight. */
export const isStated = ({ length, bends }: Section): boolean =>
  length !== undefined && (bends !== undefined || length <= straightRun().value);

/** What is not written is taken at its best, so that what is found over-full is so in any case. */
export const runOf = ({ length, bends }: Section): Run => ({ length: length ?? 0, bends: bends ?? 0 });

export function sectionsOf(fact: ContainmentFact): Section[] {
  const { length, bends } = fact.args;
  const inner = innerOf(fact, "containment");
  const listed = (inner?.all("section") ?? []).map((section) => ({
    fact: section,
    length: section.args.length.value,
    bends: section.args.bends?.value,
  }));
  const own = { fact, length: length?.value, bends: bends?.value };
  return listed.length > 0 && !length && !bends ? listed : [own, ...listed];
}
