/** The loop impedance at single points of a circuit, as the latest live tests have it. */

import type { WayStudy } from "../circuit/way.ts";
import { type FactOf, type Quantity, quantityOf } from "../model/values.ts";

interface LoopPoint {
  readonly name: string;
  readonly fact: FactOf<"live", "at">;
  readonly Zs: Quantity;
}

/** Of each point the latest day that has it: highest first. A point that was not read again stands as it was read. */
export const standingLoopPoints = ({ liveTests }: WayStudy): LoopPoint[] =>
  latestOf(liveTests.flatMap(({ facts }) => pointsIn(facts.all("at")))).sort(highestFirst);

/** The same of points of which it is only known what they lie below. */
export const boundedLoopPoints = ({ liveTests }: WayStudy): LoopPoint[] =>
  latestOf(liveTests.flatMap(({ facts }) => readIn(facts.all("at")))).filter(({ Zs }) => Zs.sign === "<");

const latestOf = (points: readonly LoopPoint[]): LoopPoint[] =>
  points.filter(({ name }, index) => points.findIndex((one) => one.name === name) === index);

/** Highest first; bounds below which a reading lies are left out. */
export function loopPoints({ live }: WayStudy): LoopPoint[] {
  return pointsIn(live?.facts.all("at") ?? []).sort(highestFirst);
}

const pointsIn = (facts: readonly LoopPoint["fact"][]): LoopPoint[] =>
  readIn(facts).filter(({ Zs }) => Zs.sign !== "<");

const readIn = (facts: readonly LoopPoint["fact"][]): LoopPoint[] =>
  facts.flatMap((fact): LoopPoint[] => {
    const Zs = quantityOf(fact.args.Zs);
    return Zs ? [{ name: fact.args.point.value, fact, Zs }] : [];
  });

const highestFirst = (one: LoopPoint, other: LoopPoint): number => other.Zs.value - one.Zs.value;
