/** A breaker to BS EN 60947-2 by its settings: when each of its releases surely opens, and when it surely does not. */
import type { Edition } from "../tables/editions.ts";
import { combine, fromFormula, type Source } from "../tables/source.ts";
import type { LoopLimit } from "./loop-limit.ts";
import { amps, type Calculated, ohms, percent, plain, seconds, step, volts } from "./result.ts";

export interface BreakerSettings {
  /** A. */
  readonly instantaneous: number | undefined;
  /** A, and s within which it has opened then. */
  readonly short: { readonly current: number; readonly time: number } | undefined;
  /** How far a release may be off its setting, as a share; the standard's where the maker's is not stated. */
  readonly tolerance: number | undefined;
}

/** A release that opens within a time (s) from a current (A) on. */
interface Release {
  readonly current: Calculated;
  readonly time: number;
}

const standardTolerance = 0.2;
const toleranceOf: Source = {
  ref: "BS EN 60947-2, short-circuit releases within ±20 % of their setting",
  standing: "memory",
  remembered: [{ figure: "BS EN 60947-2, tolerance of short-circuit releases", share: 0.1 }],
};
const asStated: Source = { ref: "Settings as stated", standing: "computed" };

const band = ({ tolerance }: BreakerSettings) => ({
  share: tolerance ?? standardTolerance,
  source: fromFormula(combine(asStated, tolerance === undefined ? toleranceOf : asStated)),
});

/** Within which a release without a delay has opened, s. */
const atOnce = 0.1;

/** The releases as they surely open, the quickest first. */
export function releasesOf(settings: BreakerSettings): readonly Release[] {
  const { instantaneous, short } = settings;
  const { share, source } = band(settings);
  const from = (name: string, setting: number, time: number): Release => {
    const value = setting * (1 + share);
    const numbers = `${amps(setting)} × (1 + ${percent(share * 100)})`;
    return {
      current: { value, unit: "A", steps: [step(`${name} release surely opens at`, numbers, amps(value))], source },
      time,
    };
  };
  return [
    ...(instantaneous === undefined ? [] : [from("instantaneous", instantaneous, atOnce)]),
    ...(short ? [from("short-time", short.current, short.time)] : []),
  ];
}

/** The greatest loop (Ω) at which a release opens within a time (s); nothing where none is set. */
export function settingsLimit(
  settings: BreakerSettings,
  time: number,
  U0: number,
  { cmin }: Pick<Edition, "cmin">,
): LoopLimit | undefined {
  const [least] = releasesOf(settings)
    .filter((release) => release.time <= time)
    .toSorted((one, other) => one.current.value - other.current.value);
  if (!least) return undefined;
  const exact = (U0 * cmin.value) / least.current.value;
  // No table prints these: what is cut off is on the safe side.
  const value = Math.floor(exact * 1000) / 1000;
  const numbers = `${volts(U0)} × ${plain(cmin.value)} / ${amps(least.current.value)}`;
  const steps = [
    ...least.current.steps,
    step("opens within", "", seconds(least.time)),
    step("Zs = U0 × Cmin / Ia", numbers, ohms(value)),
  ];
  return { value, exact, unit: "Ω", steps, source: fromFormula(combine(least.current.source, cmin.source)) };
}

/** Below this current (A) no short-circuit release opens without a delay; what is behind may open alone up to it. */
export function opensAtOnceFrom(settings: BreakerSettings): Calculated | undefined {
  const { instantaneous } = settings;
  if (instantaneous === undefined) return undefined;
  const { share, source } = band(settings);
  const value = instantaneous * (1 - share);
  const numbers = `${amps(instantaneous)} × (1 − ${percent(share * 100)})`;
  return { value, unit: "A", steps: [step("instantaneous release may open from", numbers, amps(value))], source };
}
