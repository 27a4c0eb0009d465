/** The heat of a fault in the conductors: which current, which time, and what the conductor stands. */
import { adiabaticFactor, adiabaticSize, type Calculated, withstand } from "../calc/index.ts";
import { plain, step } from "../calc/result.ts";
import { energyClasses } from "../tables/devices.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { cellOf } from "../tables/table.ts";
import { leastFaults } from "./fault-levels.ts";
import type { BoardNode } from "./network.ts";
import { type TripTime, tripTime } from "./trip.ts";
import type { WayStudy } from "./way.ts";

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

export function liveHeat(node: BoardNode, study: WayStudy): LiveHeat | undefined {
  const { cable } = study;
  const k = lineFactor(study);
  if (!cable || !k || study.isSpare) return undefined;
  const { neutral, earth } = leastFaults(node, study);
  // Both go through the line conductor, and the smaller lasts longer. Through an electrode too little flows to heat it.
  const electrode = study.supply.earthing === "TT" || !earth;
  const fault = neutral && (electrode || neutral.value < earth.value) ? neutral : electrode ? undefined : earth;
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

/**
 * The let-through energy of a breaker of class 3 at a fault current, between the figures of its class at 3, 6 and 10 kA:
 * it rises with the current along a straight line on logarithmic scales.
 */
export function letThroughAt(study: WayStudy, fault: number): LetThrough | undefined {
  const { device, cable } = study;
  const k = lineFactor(study);
  if (device?.family !== "breaker" || device.rating === undefined || !cable || !k) return undefined;
  if ((device.curve !== "B" && device.curve !== "C") || device.rating > 32 || cable.material !== "copper")
    return undefined;
  const column = `${device.curve === "B" ? "b" : "c"}${device.rating <= 16 ? 16 : 32}` as const;
  const points = energyClasses.rows
    .filter(({ facts }) => facts.class === 3)
    .map((row) => ({ at: row.facts.icn * 1000, ...cellOf(energyClasses, row, column) }))
    .toSorted((one, other) => one.at - other.at);
  const over = points.findIndex(({ at }) => at >= fault);
  const high = points[over === 0 ? 1 : over];
  const low = points[over === 0 ? 0 : over - 1];
  // Above 10 kA no figure is kept.
  if (!high || !low) return undefined;
  const slope = Math.log(high.value / low.value) / Math.log(high.at / low.at);
  const value = low.value * (fault / low.at) ** slope;
  const numbers = `class 3, ${plain(low.value)} A²s at ${low.at / 1000} kA and ${plain(high.value)} A²s at ${high.at / 1000} kA`;
  const source = fromFormula(combine(low.source, high.source));
  const energy: Calculated = { value, unit: "A²s", steps: [step("I²t", numbers, `${plain(value, 0)} A²s`)], source };
  const byCpc = cable.cpc !== undefined && cable.cpc < cable.line && cable.cpcBy === undefined;
  const csa = byCpc && cable.cpc !== undefined ? cable.cpc : cable.line;
  return { energy, stands: withstand(csa, k), conductor: byCpc ? "cpc" : "line", csa };
}
