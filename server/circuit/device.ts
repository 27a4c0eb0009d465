/** The device of a way: what its line says, in the terms the calculations ask in. */
import type { BreakerSettings } from "../calc/settings.ts";
import type { FactOf, Facts } from "../model/values.ts";
import { type Family, familyOf } from "../tables/standard-values.ts";

type OldCurve = "1" | "2" | "3" | "4";

export interface Device {
  readonly fact: FactOf<"way", "device">;
  readonly standard: string;
  readonly family: Family | undefined;
  /** B, C or D; 1 to 4 for a breaker to BS 3871. */
  readonly curve: "B" | "C" | "D" | OldCurve | undefined;
  /** Rated current In, A; missing where the line gives none. */
  readonly rating: number | undefined;
  /** Rated breaking capacity, A. */
  readonly breaking: number | undefined;
  /** What its releases are set to, where that is stated; `rating` is then the setting of the overload release. */
  readonly settings: BreakerSettings | undefined;
}

export function deviceOf(facts: Facts<"way">): Device | undefined {
  const fact = facts.one("device");
  if (!fact) return undefined;
  const { standard, curve, rating, breaking, oldType } = fact.args;
  const family = familyOf(standard.value);
  const old = family === "legacy-breaker" ? (oldType?.value.slice("type-".length) as OldCurve | undefined) : undefined;
  return {
    fact,
    standard: standard.value,
    family,
    curve: curve?.curve ?? old,
    rating: facts.one("settings")?.args.thermal?.value ?? curve?.rating ?? rating?.value,
    breaking: breaking?.value,
    settings: settingsOf(facts.one("settings")),
  };
}

function settingsOf(fact: FactOf<"way", "settings"> | undefined): BreakerSettings | undefined {
  const { short, within, instantaneous, tolerance } = fact?.args ?? {};
  if (!short && !instantaneous) return undefined;
  return {
    instantaneous: instantaneous?.value,
    // Without its time a short-time release is not known to open soon enough for anything.
    short: short && within ? { current: short.value, time: within.value } : undefined,
    tolerance: tolerance && tolerance.value / 100,
  };
}
