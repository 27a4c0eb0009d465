/** How long a device takes, and from where its magnetic release works. */
import { fallsShort } from "../calc/compare.ts";
import { loopLimit } from "../calc/loop-limit.ts";
import { type OwnFigure, ownLimit, ownPoints } from "../calc/own-device.ts";
import { amps, type Calculated, plain, seconds, step } from "../calc/result.ts";
import { type BreakerSettings, opensAtOnceFrom, releasesOf } from "../calc/settings.ts";
import { tripBands } from "../tables/devices.ts";
import type { Edition } from "../tables/editions.ts";
import { combine, fromFormula } from "../tables/source.ts";
import type { Family } from "../tables/standard-values.ts";
import { known } from "../tables/table.ts";
import { ownFiguresOf } from "./own-device.ts";
import type { Device, WayStudy } from "./way.ts";

/** The time a device takes for a current, s. */
export interface TripTime {
  readonly time: Calculated;
  /** Whether it may be less: a breaker within its magnetic range, a fuse at more than its curve is kept for. */
  readonly atMost: boolean;
}

/** The slow and the quick end of what is kept of a fuse's curve, s. */
const slow = 5;
const quick = 0.4;

/** To where the curves of breakers are drawn, s. Below it the let-through energy would have to be known. */
export const magneticTime = 0.1;

/** A device by what is marked on it, and the voltage it works at. */
interface Tripping {
  readonly standard: string;
  readonly family: Family | undefined;
  readonly curve: Device["curve"];
  readonly rating: number;
  /** Nominal voltage to earth, V. */
  readonly U0: number;
  readonly edition: Edition;
  readonly settings?: BreakerSettings | undefined;
  /** Figures of a book of one's own, which go before the tables. */
  readonly own: readonly OwnFigure[];
}

/** The device of a way, where its rating and the edition are known. */
export function trippingOf({ device, supply, context }: WayStudy): Tripping | undefined {
  const { edition } = context;
  if (device?.rating === undefined || !edition) return undefined;
  const { standard, family, curve, rating, settings } = device;
  const own = ownFiguresOf(device, context);
  return { standard, family, curve, rating, U0: supply.U0, edition, settings, own };
}

/** The time the device of a way needs at a current; nothing where that is longer than the adiabatic equation holds for. */
export function tripTime(study: WayStudy, current: number): TripTime | undefined {
  const device = trippingOf(study);
  return device && tripTimeOf(device, current);
}

export function tripTimeOf(device: Tripping, current: number): TripTime | undefined {
  if (device.settings) return releaseTime(device.settings, current);
  if (device.family === "breaker" || device.family === "legacy-breaker") {
    const most = operatingCurrent(device, quick);
    if (!most || fallsShort(current, most.value)) return undefined;
    const steps = [...most.steps, step("t, magnetic trip, at most", "", seconds(magneticTime))];
    return { time: { value: magneticTime, unit: "s", steps, source: most.source }, atMost: true };
  }
  if (device.own.length > 0) return byPoints(device, current);
  const [long, short] = [operatingCurrent(device, slow), operatingCurrent(device, quick)];
  if (!long || fallsShort(current, long.value)) return undefined;
  // Larger fuses stand in the table of the longer time only.
  if (!short) return atMost(long, slow);
  if (current >= short.value) return atMost(short, quick);
  const slope = Math.log(slow / quick) / Math.log(short.value / long.value);
  const value = slow * (long.value / current) ** slope;
  const numbers = `between ${seconds(slow)} at ${amps(long.value)} and ${seconds(quick)} at ${amps(short.value)}`;
  const source = fromFormula(combine(long.source, short.source));
  return {
    time: { value, unit: "s", steps: [step(`t at ${amps(current)}`, numbers, seconds(value))], source },
    atMost: false,
  };
}

/** The time at a current between points of a curve, those of the tables filling in for what a book of one's own lacks. */
function byPoints(device: Tripping, current: number): TripTime | undefined {
  const own = ownPoints(device.own, device.edition.cmin.value);
  const tabled = [slow, quick].flatMap((time) => {
    const found = own.some((point) => point.time === time) ? undefined : operatingCurrent(device, time);
    return found ? [{ current: found.value, time, source: found.source }] : [];
  });
  const points = [...own, ...tabled].toSorted((one, other) => other.time - one.time);
  const [first, last] = [points[0], points.at(-1)];
  // Points that are out of order are reported where they stand, and no time follows from them.
  const rising = points.every((point, at) => at === 0 || point.current > (points[at - 1]?.current ?? 0));
  if (!first || !last || !rising || fallsShort(current, first.current)) return undefined;
  if (current >= last.current)
    return atMost({ value: last.current, unit: "A", steps: [], source: last.source }, last.time);
  const at = points.findIndex((point) => point.current > current);
  const [before, after] = [points[at - 1] ?? first, points[at] ?? last];
  const slope = Math.log(before.time / after.time) / Math.log(after.current / before.current);
  const value = before.time * (before.current / current) ** slope;
  const numbers = `between ${seconds(before.time)} at ${amps(before.current)} and ${seconds(after.time)} at ${amps(after.current)}`;
  const source = fromFormula(combine(before.source, after.source));
  return {
    time: { value, unit: "s", steps: [step(`t at ${amps(current)}`, numbers, seconds(value))], source },
    atMost: false,
  };
}

/** The quickest release that surely opens at a current. */
function releaseTime(settings: BreakerSettings, current: number): TripTime | undefined {
  const opens = releasesOf(settings).find((release) => !fallsShort(current, release.current.value));
  if (!opens) return undefined;
  const { current: from, time } = opens;
  const steps = [...from.steps, step("t, at most", "", seconds(time))];
  return { time: { value: time, unit: "s", steps, source: from.source }, atMost: true };
}

function atMost(from: Calculated, time: number): TripTime {
  const steps = [step(`t at ${amps(from.value)} or more, at most`, "", seconds(time))];
  return { time: { value: time, unit: "s", steps, source: from.source }, atMost: true };
}

/** The current that operates a device in a time, A: that from which its limit of Zs is calculated. */
export function operatingCurrent(device: Tripping, time: number): Calculated | undefined {
  const { standard, curve, rating, U0, edition } = device;
  const limit =
    ownLimit(device.own, time, { U0, edition }) ??
    loopLimit({ standard, ...(curve ? { curve } : {}), rating, time, U0, edition });
  if (!limit) return undefined;
  const value = (U0 * edition.cmin.value) / limit.exact;
  return { value, unit: "A", steps: [step(`operates in ${seconds(time)} at`, "", amps(value))], source: limit.source };
}

/** Where a breaker's magnetic release surely works and where it surely does not, A. */
export function magneticBand({ device }: WayStudy): { readonly from: Calculated; readonly to: Calculated } | undefined {
  if (device?.settings) {
    const [from, to] = [opensAtOnceFrom(device.settings), releasesOf(device.settings)[0]?.current];
    return from && to && { from, to };
  }
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
