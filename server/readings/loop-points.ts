/** The loop impedance at single points of a circuit, as the latest live tests have it. */

import type { WayStudy } from "../circuit/way.ts";
import { type FactOf, type Quantity, quantityOf } from "../model/values.ts";

interface LoopPoint {
  readonly name: string;
  readonly fact: FactOf<"live", "at">;
  readonly Zs: Quantity;
}

/** Highest first; bounds below which a reading lies are left out. */
export function loopPoints({ live }: WayStudy): LoopPoint[] {
  const points = (live?.facts.all("at") ?? []).flatMap((fact): LoopPoint[] => {
    const Zs = quantityOf(fact.args.Zs);
    return Zs && Zs.sign !== "<" ? [{ name: fact.args.point.value, fact, Zs }] : [];
  });
  return points.sort((one, other) => other.Zs.value - one.Zs.value);
}
