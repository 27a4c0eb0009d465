/** The protective conductor of a way: by Table 54.7, or by the heat of the least fault that trips its device. */

import { adiabaticFactor, adiabaticSize } from "../calc/adiabatic.ts";
import { fallsShort } from "../calc/compare.ts";
import { selectedOfOther, selectedProtective } from "../calc/protective-size.ts";
import { rcdTime } from "../calc/rcd-time.ts";
import { amps, type Calculated, percent, type Step, seconds, squareMillimetres, step, worked } from "../calc/result.ts";
import { releasesOf } from "../calc/settings.ts";
import { parallelSources } from "../tables/parallel.ts";
import { asWritten, combine, type Source } from "../tables/source.ts";
import { isParallel } from "./cable.ts";
import { armourSection, fractionByArmour, operatingFactorOf } from "./cpc.ts";
import { type FaultPlace, farthestPlace, faultPlaces, shareStep, timesAt } from "./parallel.ts";
import { magneticTime, operatingCurrent, trippingOf, tripTimeOf } from "./trip.ts";
import type { Cable, WayStudy } from "./way.ts";

/** What a protective conductor has to be, and by which method that was found. */
export interface ProtectiveNeed {
  /** Which of them it is about: the core of copper, or the armour. */
  readonly of: "cpc" | "armour";
  /** Its cross-section, mm². */
  readonly has: Calculated;
  readonly need: Calculated;
  readonly method: "table" | "adiabatic";
  /** Whether current and time belong to one and the same point of the device's curve. */
  readonly certain: boolean;
}

export const suffices = ({ has, need }: Pick<ProtectiveNeed, "has" | "need">): boolean =>
  !fallsShort(has.value, need.value);

/**
 * Table 54.7 where it is met or nothing better is known. Otherwise S = √(I²t)/k at the point of the device's curve that
 * decides its loop impedance, the one fault of which both current and time are known. A breaker trips there within the
 * 0.1 s its curve is drawn to, perhaps sooner, so what follows for it is questionable and not certain. A core and the armour
 * side by side share the fault current by their resistances; where both are there the one that is worse off is told of.
 *
 * Where the loop (Ω) of the circuit is known, a fuse is asked at the fault that flows in it: with more current it lets less
 * energy through than at the slow end of its curve.
 */
export function protectiveNeed(study: WayStudy, loopOf?: () => number | undefined): ProtectiveNeed | undefined {
  const { cable } = study;
  if (!cable || study.isSpare || cable.material !== "copper") return undefined;
  // Its maker tests the casing and its bars: what they withstand is Icw.
  if (cable.construction === "busbar-trunking") return undefined;
  const paths = pathsOf(cable);
  const byTable = paths.flatMap(needByTable);
  const met = byTable.find(suffices);
  if (met) return { ...met, certain: true };
  // A core beside an armour of unknown resistance carries a part of the current that cannot be told.
  if (paths.some(({ share }) => share === "unknown")) return undefined;
  const points = pointsToJudge(study, cable, loopOf);
  return worstOf(paths.flatMap((path) => points.flatMap((point) => needAt(cable, path, point)))) ?? byTable[0];
}

const needByTable = ({ of, has, table }: Path): ProtectiveNeed[] =>
  table ? [{ of, has, need: table, method: "table", certain: false }] : [];

/** Of a fuse the faults that flow, where the loop is known; otherwise the least that trips the device in time. */
function pointsToJudge(study: WayStudy, cable: Cable, loopOf: (() => number | undefined) | undefined): PlacedPoint[] {
  const { edition } = study.context;
  const slowest = edition && slowestPoint(study);
  if (!slowest) return [];
  const loop = isBreaker(study) ? undefined : loopOf?.();
  const flowing = loop === undefined ? [] : pointsIn(study, cable, study.supply.U0 * edition.cmin.value, loop);
  return flowing.length > 0 ? flowing : [{ ...slowest, place: farthestPlace(cable, ["line", "cpc"]) }];
}

const isBreaker = ({ device }: WayStudy): boolean =>
  device?.family === "breaker" || device?.family === "legacy-breaker";

/** The point of the device's curve that decides its loop impedance. */
function slowestPoint(study: WayStudy): FaultPoint | undefined {
  const { device, overcurrentLimit: limit, disconnectionTime, supply, context } = study;
  const { edition } = context;
  if (!limit || !disconnectionTime || !edition) return undefined;
  const longest = disconnectionTime.value;
  const settings = device?.settings;
  const ownTime = settings && releasesOf(settings).find((release) => release.time <= longest)?.time;
  const time = ownTime ?? (isBreaker(study) ? magneticTime : longest);
  return {
    current: (supply.U0 * edition.cmin.value) / limit.exact,
    time,
    certain: !isBreaker(study) && !settings,
    source: limit.source,
    steps: [...limit.steps, step("t at that current", "", seconds(time))],
  };
}

/**
 * The same through an earth electrode, Ω, which lets so little flow that an RCD and not the overcurrent device disconnects:
 * what Table 54.7 allows for is then needed by nothing.
 */
export function protectiveByRcd(study: WayStudy, earth: number): ProtectiveNeed | undefined {
  const { cable, rcds, supply, context } = study;
  const [rcd] = rcds;
  const { edition } = context;
  if (!cable || !rcd || !edition || !(earth > 0)) return undefined;
  const longest = rcdTime({ ...rcd, multiple: 1, edition })?.greatest;
  const current = supply.U0 / earth;
  if (!longest || current < rcd.sensitivity) return undefined;
  const point: PlacedPoint = {
    current,
    time: longest.value,
    certain: true,
    source: combine(longest.source, asWritten),
    steps: [step("earth fault through the electrode, U0 / RA", "", amps(current)), ...longest.steps],
    place: farthestPlace(cable, ["line", "cpc"]),
  };
  return worstOf(pathsOf(cable).flatMap((path) => needAt(cable, path, point)));
}

/** The one of which least is left of what it needs. */
const worstOf = (found: readonly ProtectiveNeed[]): ProtectiveNeed | undefined =>
  found.toSorted((a, b) => a.has.value / a.need.value - b.has.value / b.need.value)[0];

/** Current (A) and time (s) of one fault. */
interface FaultPoint {
  readonly current: number;
  readonly time: number;
  /** Whether they belong together; otherwise it may be less. */
  readonly certain: boolean;
  readonly source: Source;
  readonly steps: readonly Step[];
}

/** A fault somewhere along the conductors. */
interface PlacedPoint extends FaultPoint {
  readonly place: FaultPlace;
}

/** The fuse at the fault that flows: at the end, and of conductors in parallel anywhere along one of them. */
function pointsIn(study: WayStudy, cable: Cable, lowest: number, loop: number): PlacedPoint[] {
  const [cold, factor] = [study.greatestR1R2, operatingFactorOf(cable)];
  // Of what is measured alone nobody knows how much lies in this cable.
  const own = cold && factor ? Math.min(loop, cold.value * factor.value) : 0;
  return faultPlaces(cable).flatMap((place) => {
    const Z = loop - own + own * timesAt(cable, place, ["line", "cpc"]);
    const point = pointOf(study, lowest / Z);
    return point ? [{ ...point, place }] : [];
  });
}

function needAt(cable: Cable, { of, has, k, share: part }: Path, point: PlacedPoint): ProtectiveNeed[] {
  const share = part === "unknown" ? undefined : part;
  const { place } = point;
  const own = (share?.value ?? 1) * place.share.cpc;
  const size = adiabaticSize(point.current * own, point.time, k);
  if (!size) return [];
  const sources = [...(share ? [share.source] : []), ...(isParallel(cable) ? [parallelSources.fault] : [])];
  const need = worked(size.value, size.unit, combine(size.source, point.source, ...sources), () => [
    ...point.steps,
    ...(share?.steps ?? []),
    ...shareStep(cable.parallel.cpc, place, "cpc"),
    ...k.steps,
    ...size.steps,
  ]);
  return [{ of, has, need, method: "adiabatic", certain: point.certain }];
}

/** A fuse at the fault that flows; nothing where that is less than it needs to operate in time. */
function pointOf(study: WayStudy, current: number): FaultPoint | undefined {
  const device = trippingOf(study);
  const trip = device && tripTimeOf(device, current);
  if (!trip) return undefined;
  const { time, atMost } = trip;
  // Beyond what is kept of its curve a greater current lets no more energy through than the last point of it.
  // A breaker with a delay lets the more through the more flows: it is asked at that current itself.
  const last = atMost && !device.settings ? operatingCurrent(device, time.value) : undefined;
  if (atMost && !last && !device.settings) return undefined;
  const flows = step("earth fault at the end, U0 × Cmin / Zs", "", amps(current));
  return {
    current: last?.value ?? current,
    time: time.value,
    certain: !atMost,
    source: time.source,
    steps: [flows, ...time.steps],
  };
}

/** One of the conductors a fault current runs through. */
interface Path extends Pick<ProtectiveNeed, "of" | "has"> {
  readonly k: Calculated;
  /** What Table 54.7 asks of it, were it alone. */
  readonly table: Calculated | undefined;
  /** Its share of the fault current; undefined where it carries all of it. */
  readonly share: Calculated | "unknown" | undefined;
}

function pathsOf(cable: Cable): readonly Path[] {
  const core = coreOf(cable);
  if (cable.cpcBy !== "armour") return core ? [core] : [];
  const armour = armourOf(cable);
  if (!core) return armour && cable.cpc === undefined ? [armour] : [];
  const share = fractionByArmour(cable);
  if (!armour || !share) return [{ ...core, share: "unknown" }];
  const rest = 1 - share.value;
  const steps = [...share.steps, step("share of the core", `1 − ${percent(share.value * 100)}`, percent(rest * 100))];
  return [
    { ...core, share: { ...share, value: rest, steps } },
    { ...armour, share },
  ];
}

const insulationOf = ({ insulation }: Cable) => (insulation === 90 ? "ts90" : "pvc70");

function coreOf(cable: Cable): Path | undefined {
  const { cpc: csa, line } = cable;
  if (csa === undefined) return undefined;
  const k = adiabaticFactor({ use: "incorporated", material: "copper", insulation: insulationOf(cable), csa });
  if (!k) return undefined;
  const has = worked(csa, "mm²", asWritten, () => [step("the protective conductor", "", squareMillimetres(csa))]);
  return { of: "cpc", has, k, table: selectedProtective(line), share: undefined };
}

function armourOf(cable: Cable): Path | undefined {
  const has = armourSection(cable);
  const k = adiabaticFactor({ use: "armour", material: "steel", insulation: insulationOf(cable) });
  const k1 = lineK(cable);
  if (!has || !k || !k1) return undefined;
  return { of: "armour", has, k, table: selectedOfOther(cable.line, k1, k), share: undefined };
}

/** What Table 54.7 asks of the armour of a cable, mm². */
export const armourTableNeed = (cable: Cable): Calculated | undefined => armourOf(cable)?.table;

const lineK = (cable: Cable): Calculated | undefined =>
  adiabaticFactor({ use: "line", material: cable.material, insulation: insulationOf(cable), csa: cable.line });

/** What Table 54.7 asks of the steel of a conduit or trunking that is the protective conductor, mm². */
export function enclosureNeed({ cable, isSpare }: WayStudy): Calculated | undefined {
  if (!cable || isSpare || (cable.cpcBy !== "conduit" && cable.cpcBy !== "trunking")) return undefined;
  const k2 = adiabaticFactor({ use: "enclosure", material: "steel", insulation: insulationOf(cable) });
  const k1 = lineK(cable);
  return k1 && k2 && selectedOfOther(cable.line, k1, k2);
}
