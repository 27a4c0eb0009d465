/** How long a device takes, and from where its magnetic release works. */
import { type Calculated, loopLimit } from "../calc/index.ts";
import { amps, plain, seconds, step } from "../calc/result.ts";
import { tripBands } from "../tables/devices.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { known } from "../tables/table.ts";
import type { WayStudy } from "./way.ts";

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
  if (!long || current < long.value * (1 - 1e-9)) return undefined;
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

function atMost(from: Calculated, time: number): TripTime {
  const steps = [step(`t at ${amps(from.value)} or more, at most`, "", seconds(time))];
  return { time: { value: time, unit: "s", steps, source: from.source }, atMost: true };
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
