/** What was read at the points of a circuit, and of one that is no ring, line linked to earth or neutral at the board. */

import type { Test } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { type FactOf, type Quantity, quantityOf } from "../model/values.ts";

interface PointLine {
  readonly name: string;
  readonly fact: FactOf<"dead", "at">;
  readonly test: Test<"dead">;
  readonly "L-N": Quantity | undefined;
  readonly "L-E": Quantity | undefined;
  /** The protective conductor alone, by a long lead. */
  readonly R2: Quantity | undefined;
}

export const radialPoints = (study: WayStudy): PointLine[] => (study.isRing ? [] : pointLines(study));

/** Of each point, of a ring or a radial, the latest line. */
export function pointLines(study: WayStudy): PointLine[] {
  if (study.isSpare) return [];
  const found = new Map<string, PointLine>();
  for (const test of study.deadTests) {
    for (const fact of test.facts?.all("at") ?? []) {
      const name = fact.args.point?.value;
      if (name === undefined || found.has(name)) continue;
      found.set(name, {
        name,
        fact,
        test,
        "L-N": quantityOf(fact.args["L-N"]),
        "L-E": quantityOf(fact.args["L-E"]),
        R2: quantityOf(fact.args.R2),
      });
    }
  }
  return [...found.values()];
}
