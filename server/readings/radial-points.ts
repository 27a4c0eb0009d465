/** What was read at the points of a circuit that is no ring, line linked to earth or neutral at the board. */

import type { Test } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { type FactOf, type Quantity, quantityOf } from "../model/values.ts";

interface RadialPoint {
  readonly name: string;
  readonly fact: FactOf<"dead", "at">;
  readonly test: Test<"dead">;
  readonly "L-N": Quantity | undefined;
  readonly "L-E": Quantity | undefined;
}

/** Of each point the latest line. */
export function radialPoints(study: WayStudy): RadialPoint[] {
  if (study.isRing || study.isSpare) return [];
  const found = new Map<string, RadialPoint>();
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
      });
    }
  }
  return [...found.values()];
}
