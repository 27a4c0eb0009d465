/** The loop impedance at single points of a circuit, as the latest live tests have it. */

import type { WayStudy } from "../circuit/way.ts";
import { type FactOf, type Quantity, quantityOf } from "../model/values.ts";

interface LoopPoint {
  readonly name: string;
  readonly fact: FactOf<"live", "at">;
  readonly Zs: Quantity;
}

/** Of each point the latest day that has it: highest first. A point that was not read again stands as it was read. */
export function standingLoopPoints({ liveTests }: WayStudy): LoopPoint[] {
  const points = liveTests.flatMap(({ facts }) => pointsIn(facts.all("at")));
  const latest = points.filter(({ name }, index) => points.findIndex((one) => one.name === name) === index);
  return latest.sort(highestFirst);
}

/** Highest first; bounds below which a reading lies are left out. */
export function loopPoints({ live }: WayStudy): LoopPoint[] {
  return pointsIn(live?.facts.all("at") ?? []).sort(highestFirst);
}

const pointsIn = (facts: readonly LoopPoint["fact"][]): LoopPoint[] =>
  facts.flatMap((fact): LoopPoint[] => {
    const Zs = quantityOf(fact.args.Zs);
    return Zs && Zs.sign !== "<" ? [{ name: fact.args.point.value, fact, Zs }] : [];
  });

const highestFirst = (one: LoopPoint, other: LoopPoint): number => other.Zs.value - one.Zs.value;
