/** The heat of a fault in the conductors: which current, which time, and what the conductor stands. */
import { adiabaticFactor, adiabaticSize, type Calculated, letThroughAtFault, withstand } from "../calc/index.ts";
import { type TripTime, tripTime } from "../circuit/trip.ts";
import type { WayStudy } from "../circuit/way.ts";
import { combine } from "../tables/source.ts";
import { leastFaults, leastShort, type Standby } from "./fault-levels.ts";
import type { BoardNode } from "./network.ts";

/** k of a live conductor. */
export function lineFactor({ cable }: WayStudy): Calculated | undefined {
  if (!cable || cable.construction === "mineral") return undefined;
  const insulation = cable.insulation === 90 ? "ts90" : "pvc70";
  return adiabaticFactor({ use: "line", material: cable.material, insulation, csa: cable.line });
}

/** The live conductor in the smallest fault at the end of its circuit. */
export interface LiveHeat {
  readonly fault: Calculated;
  readonly trip: TripTime;
  /** mm² that bear it. */
  readonly need: Calculated;
}

export function liveHeat(node: BoardNode, study: WayStudy, standby?: Standby): LiveHeat | undefined {
  const { cable } = study;
  const k = lineFactor(study);
  if (!cable || !k || study.isSpare) return undefined;
  const faults = leastFaults(node, study, standby);
  const { earth } = faults;
  const short = leastShort(faults);
  // Both go through the line conductor, and the smaller lasts longer. Through an electrode too little flows to heat it.
  const electrode = study.supply.earthing === "TT" || !earth;
  const fault = short && (electrode || short.value < earth.value) ? short : electrode ? undefined : earth;
  const trip = fault && tripTime(study, fault.value);
  if (!fault || !trip) return undefined;
  const size = adiabaticSize(fault.value, trip.time.value, k);
  if (!size) return undefined;
  const steps = [...fault.steps, ...trip.time.steps, ...k.steps, ...size.steps];
  return { fault, trip, need: { ...size, steps, source: combine(size.source, trip.time.source) } };
}

/** What a breaker lets through at a fault current, A²s at most, taken as class 3. */
export interface LetThrough {
  readonly energy: Calculated;
  /** What the thinner of line and protective conductor stands. */
  readonly stands: Calculated;
  readonly conductor: "line" | "cpc";
  readonly csa: number;
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
