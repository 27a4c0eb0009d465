/** The heat of a fault in the conductors: which current, which time, and what the conductor stands. */

import { adiabaticFactor, adiabaticSize, letThroughAtFault } from "../calc/adiabatic.ts";
import { fallsShort } from "../calc/compare.ts";
import { withstand } from "../calc/index.ts";
import { amps, type Calculated, step } from "../calc/result.ts";
import { breakingOf } from "../circuit/breaking.ts";
import { memoOfBoard } from "../circuit/kept.ts";
import { overloadProtected } from "../circuit/overload-relations.ts";
import { type FaultPlace, faultPlaces, shareStep } from "../circuit/parallel.ts";
import { operatingCurrent, type TripTime, trippingOf, tripTime } from "../circuit/trip.ts";
import type { Cable, WayStudy } from "../circuit/way.ts";
import type { Way } from "../model/file.ts";
import { parallelSources } from "../tables/parallel.ts";
import { combine } from "../tables/source.ts";
import { leastFaults, leastShort, type Standby } from "./fault-levels.ts";
import type { BoardNode, StudiedBoard } from "./network.ts";

/** k of a live conductor. */
export function lineFactor({ cable }: WayStudy): Calculated | undefined {
  if (!cable || cable.construction === "mineral" || cable.construction === "busbar-trunking") return undefined;
  const insulation = cable.insulation === 90 ? "ts90" : "pvc70";
  return adiabaticFactor({ use: "line", material: cable.material, insulation, csa: cable.line });
}

/** The live conductor in the smallest fault at the end of its circuit. */
interface LiveHeat {
  readonly fault: Calculated;
  /** `at the end of this circuit`, or where else it is. */
  readonly where: string;
  readonly trip: TripTime;
  /** mm² that bear it. */
  readonly need: Calculated;
}

/** Of conductors in parallel, at the place of a fault in one of them that heats it most. */
export function liveHeat(node: BoardNode, study: WayStudy, standby?: Standby): LiveHeat | undefined {
  const { cable } = study;
  const k = lineFactor(study);
  if (!cable || !k || study.isSpare) return undefined;
  const all = faultPlaces(cable)
    .flatMap((place) => heatAt({ node, study, cable, k, standby, place }) ?? [])
    .toSorted((one, other) => other.need.value - one.need.value);
  // What surely fails is reported before what may: of a time that may be less it is not known.
  return all.find(({ trip, need }) => !trip.atMost && fallsShort(cable.line, need.value)) ?? all[0];
}

/**
 * Whether the smallest fault would overheat a live conductor behind a fuse; nothing where what protects it against
 * overload covers that too. A breaker trips instantaneously, and its let-through energy is another matter: only of fuses
 * is the slow end known. Where the device is quicker than its curve is kept for, the heat is less than calculated.
 */
export function heatBehindFuse(node: BoardNode, study: WayStudy): (LiveHeat & { readonly fails: boolean }) | undefined {
  const { cable, device } = study;
  if (!cable || !device?.family || /breaker/.test(device.family) || overloadProtected(study)) return undefined;
  const heat = liveHeat(node, study);
  return heat && !heat.trip.atMost ? { ...heat, fails: fallsShort(cable.line, heat.need.value) } : undefined;
}

interface Heated {
  readonly node: BoardNode;
  readonly study: WayStudy;
  readonly cable: Cable;
  readonly k: Calculated;
  readonly standby: Standby | undefined;
  readonly place: FaultPlace;
}

function heatAt({ node, study, cable, k, standby, place }: Heated): LiveHeat | undefined {
  const count = cable.parallel.line;
  const faults = leastFaults(node, study, standby, count > 1 ? place : undefined);
  const { earth } = faults;
  const short = leastShort(faults);
  // Both go through the line conductor, and the smaller lasts longer. Through an electrode too little flows to heat it.
  const electrode = study.supply.earthing === "TT" || !earth;
  const fault = short && (electrode || short.value < earth.value) ? short : electrode ? undefined : earth;
  const trip = fault && tripTime(study, fault.value);
  if (!fault || !trip) return undefined;
  // Beyond what is kept of a fuse's curve a greater current lets no more energy through than the last point of it.
  const last = count > 1 && trip.atMost ? lastPoint(study, trip) : undefined;
  const current = Math.min(fault.value, last ?? fault.value);
  const size = adiabaticSize(current * place.share.line, trip.time.value, k);
  if (!size) return undefined;
  const share = shareStep(count, place, "line");
  const which = fault === earth ? "line to earth" : "between live conductors";
  const named = step(`least fault at the end, ${which}`, "", amps(fault.value));
  const steps = [...fault.steps, named, ...trip.time.steps, ...share, ...k.steps, ...size.steps];
  const sources = [trip.time.source, ...(count > 1 ? [parallelSources.fault] : [])];
  const where = count > 1 ? `in one of the ${count} in parallel` : "at the end of this circuit";
  return { fault, where, trip, need: { ...size, steps, source: combine(size.source, ...sources) } };
}

/** The current (A) that belongs to the longest time a fuse may take. */
function lastPoint(study: WayStudy, { time }: TripTime): number | undefined {
  const device = trippingOf(study);
  const isFuse = device && !device.settings && !device.family?.endsWith("breaker");
  return isFuse ? operatingCurrent(device, time.value)?.value : undefined;
}

/** What a breaker lets through at a fault current, A²s at most, taken as class 3. */
interface LetThrough {
  readonly energy: Calculated;
  /** What the thinner of line and protective conductor stands. */
  readonly stands: Calculated;
  readonly conductor: "line" | "cpc";
  readonly csa: number;
}

/** A way and the current (A) beyond which something in it may fail. */
interface FailingAbove {
  readonly way: Way;
  readonly current: number;
}

const ascending = (one: FailingAbove, other: FailingAbove): number => one.current - other.current;

/** The ways behind a device, by what it breaks, the least first. */
export const byBreaking = memoOfBoard(({ studies }: StudiedBoard): readonly FailingAbove[] =>
  studies
    .flatMap((study): FailingAbove[] => {
      const capacity = study.isSpare ? undefined : breakingOf(study);
      return capacity ? [{ way: study.way, current: capacity.value }] : [];
    })
    .toSorted(ascending),
);

/** A, up to which the let-through of a class is kept. */
const greatestKept = 10_000;

/** The ways whose breaker may let through more than a conductor stands, by the current from which it does, the least first. */
export const byLetThrough = memoOfBoard(({ studies }: StudiedBoard): readonly FailingAbove[] =>
  studies
    .flatMap((study): FailingAbove[] => {
      const current = study.isSpare ? undefined : leastExceeding(study);
      return current === undefined ? [] : [{ way: study.way, current }];
    })
    .toSorted(ascending),
);

/** To a hundredth of what is kept, downwards: let-through rises with the current, and what is found there is compared again. */
function leastExceeding(study: WayStudy): number | undefined {
  const exceedsAt = (fault: number): boolean => {
    const found = letThroughAt(study, fault);
    return found !== undefined && found.energy.value > found.stands.value;
  };
  if (!exceedsAt(greatestKept)) return undefined;
  let [low, high] = [0, greatestKept];
  while (high - low > greatestKept / 100) {
    const middle = (low + high) / 2;
    if (exceedsAt(middle)) high = middle;
    else low = middle;
  }
  return low;
}

/** What a breaker of a way lets through at a fault current (A), and what its thinnest conductor stands. */
export function letThroughAt(study: WayStudy, fault: number): LetThrough | undefined {
  const { device, cable } = study;
  const k = lineFactor(study);
  if (device?.family !== "breaker" || device.rating === undefined || !cable || !k) return undefined;
  if ((device.curve !== "B" && device.curve !== "C") || cable.material !== "copper") return undefined;
  const energy = letThroughAtFault({ curve: device.curve, rating: device.rating, limitingClass: 3 }, fault);
  if (!energy) return undefined;
  const byCpc = cable.cpc !== undefined && cable.cpc < cable.line && cable.cpcBy === undefined;
  const csa = byCpc && cable.cpc !== undefined ? cable.cpc : cable.line;
  return { energy, stands: withstand(csa, k), conductor: byCpc ? "cpc" : "line", csa };
}
