/** The heat of a fault in the conductors: which current, which time, and what the conductor stands. */
import { adiabaticFactor, adiabaticSize, type Calculated, loopLimit, withstand } from "../calc/index.ts";
import { amps, plain, seconds, step } from "../calc/result.ts";
import { energyClasses, tripBands } from "../tables/devices.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { cellOf, known } from "../tables/table.ts";
import { leastFaults } from "./fault-levels.ts";
import type { BoardNode } from "./network.ts";
import type { WayStudy } from "./way.ts";

/** k of a live conductor. */
export function lineFactor({ cable }: WayStudy): Calculated | undefined {
  if (!cable || cable.construction === "mineral") return undefined;
  const insulation = cable.insulation === 90 ? "ts90" : "pvc70";
  return adiabaticFactor({ use: "line", material: cable.material, insulation, csa: cable.line });
}

/** The time a device takes for a current, s. */
export interface TripTime {
  readonly time: Calculated;
  /** Whether it may be less: a breaker within its magnetic range, a fuse at more than its curve is kept for. */
  readonly atMost: boolean;
}

/** The slow and the quick end of what is kept of a fuse's curve, and of the time in which a breaker trips at once, s. */
const slow = 5;
const quick = 0.4;
const magnetic = 0.1;

/** The time a device needs at a current; nothing where that is longer than the adiabatic equation holds for. */
export function tripTime(study: WayStudy, current: number): TripTime | undefined {
  const { device } = study;
  if (device?.family === "breaker" || device?.family === "legacy-breaker") {
    const most = currentFor(study, quick);
    if (!most || current < most.value * (1 - 1e-9)) return undefined;
    const steps = [...most.steps, step("t, magnetic trip, at most", "", seconds(magnetic))];
    return { time: { value: magnetic, unit: "s", steps, source: most.source }, atMost: true };
  }
  const [long, short] = [currentFor(study, slow), currentFor(study, quick)];
  if (!long || !short || current < long.value * (1 - 1e-9)) return undefined;
  if (current >= short.value) {
    const steps = [step(`t at ${amps(short.value)} or more, at most`, "", seconds(quick))];
    return { time: { value: quick, unit: "s", steps, source: short.source }, atMost: true };
  }
  const slope = Math.log(slow / quick) / Math.log(short.value / long.value);
  const value = slow * (long.value / current) ** slope;
  const numbers = `between ${seconds(slow)} at ${amps(long.value)} and ${seconds(quick)} at ${amps(short.value)}`;
  const source = fromFormula(combine(long.source, short.source));
  return {
    time: { value, unit: "s", steps: [step(`t at ${amps(current)}`, numbers, seconds(value))], source },
    atMost: false,
  };
}

/** The current that operates a device in a time, A: that from which its limit of Zs is reckoned. */
function currentFor(study: WayStudy, time: number): Calculated | undefined {
  const { device, supply, context } = study;
  if (device?.rating === undefined || !context.edition) return undefined;
  const { standard, curve, rating } = device;
  const limit = loopLimit({
    standard,
    ...(curve ? { curve } : {}),
    rating,
    time,
    U0: supply.U0,
    edition: context.edition,
  });
  if (!limit) return undefined;
  const value = (supply.U0 * context.edition.cmin.value) / limit.exact;
  return { value, unit: "A", steps: [step(`operates in ${seconds(time)} at`, "", amps(value))], source: limit.source };
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
  // Both go through the line conductor: the smaller lasts longer.
  const fault = neutral && earth ? (neutral.value < earth.value ? neutral : earth) : (neutral ?? earth);
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

/** Where a breaker's magnetic release surely works and where it surely does not, A. */
export function magneticBand({ device }: WayStudy): { readonly from: Calculated; readonly to: Calculated } | undefined {
  if (device?.family !== "breaker" || device.curve === undefined || device.rating === undefined) return undefined;
  const { curve, rating } = device;
  const at = (column: "from" | "to"): Calculated => {
    const { value, source } = known(tripBands, { key: curve }, column);
    const current = value * rating;
    const steps = [step(`type ${curve}, ${plain(value)} × In`, `${plain(value)} × ${amps(rating)}`, amps(current))];
    return { value: current, unit: "A", steps, source: fromFormula(source) };
  };
  return { from: at("from"), to: at("to") };
}
