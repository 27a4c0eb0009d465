/** Where along conductors in parallel a fault in one of them is judged (434.4): it is fed from both of its ends. */
import type { Conductor } from "../calc/circuit-network.ts";
import { faultInOneOf } from "../calc/parallel.ts";
import { percent, plain, type Step, step } from "../calc/result.ts";
import { type Cable, isParallel, single } from "./cable.ts";
import { conductorPerMetre } from "./cpc.ts";

/** A place along a cable, or its end, where all that lies in parallel is joined again. */
export interface FaultPlace {
  /** Of the length from the supply, 0 to 1. */
  readonly at: number;
  /** What of the fault current flows in the faulty one of each kind, from the supply's side. */
  readonly share: Readonly<Record<Conductor, number>>;
  /** The resistance to the place, as a multiple of that from end to end of all together. */
  readonly times: Readonly<Record<Conductor, number>>;
}

/** So many stretches are tried; the loop is greatest at n / (2 (n − 1)) of the length, which up to 4 of them all meet. */
const stretches = 24;

const placeAt = ({ parallel }: Pick<Cable, "parallel">, at: number): FaultPlace => {
  const inOne = (kind: Conductor) => faultInOneOf(parallel[kind], at);
  const [line, neutral, cpc] = [inOne("line"), inOne("neutral"), inOne("cpc")];
  const of = (figure: "share" | "times") => ({ line: line[figure], neutral: neutral[figure], cpc: cpc[figure] });
  return { at, share: of("share"), times: of("times") };
};

/** The end of a cable whose conductors each lie alone. */
const atEnd: FaultPlace = placeAt({ parallel: single }, 1);

/** The end first; of conductors that lie alone nothing but that. */
export const faultPlaces = (cable: Cable): readonly FaultPlace[] =>
  isParallel(cable)
    ? Array.from({ length: stretches + 1 }, (_, index) => placeAt(cable, 1 - index / stretches))
    : [atEnd];

/** The resistance of conductors in series to a place, as a multiple of that to the end. */
export function timesAt(cable: Cable, { times }: FaultPlace, of: readonly Conductor[]): number {
  const parts = of.map((which) => ({ r: conductorPerMetre(cable, which)?.value ?? 1, times: times[which] }));
  const whole = parts.reduce((sum, { r }) => sum + r, 0);
  return parts.reduce((sum, part) => sum + part.r * part.times, 0) / whole;
}

/** The place of the greatest loop: of two in parallel their end, of more a place before it. */
export function farthestPlace(cable: Cable, of: readonly Conductor[]): FaultPlace {
  const [end = atEnd, ...rest] = faultPlaces(cable);
  return rest.reduce((most, place) => (timesAt(cable, place, of) > timesAt(cable, most, of) ? place : most), end);
}

/** What of the current flows in one of those in parallel, as a line of working. */
export function shareStep(count: number, { at, share }: FaultPlace, which: Conductor): Step[] {
  if (count === 1) return [];
  const words = `in the faulty one of ${count}, ${placeWords(at)}`;
  return [step(words, `1 − ${plain(at, 2)} × ${count - 1}/${count}`, percent(share[which] * 100))];
}

export const placeWords = (at: number): string =>
  at === 1 ? "at the end" : at === 0 ? "next to the supply" : `${percent(at * 100)} of the way`;
