/** What a motor takes while it starts, or a transformer as it is switched on, and whether its device takes that for a fault. */
import { exceeds } from "../calc/compare.ts";
import { practiceOf } from "../calc/practice.ts";
import { productStep } from "../calc/reproducible.ts";
import { amps, type Calculated, plain, step } from "../calc/result.ts";
import { tripBands } from "../tables/devices.ts";
import { known } from "../tables/table.ts";
import type { Device, WayStudy } from "./way.ts";

interface StartingCurrent extends Calculated {
  /** Written in the schedule; otherwise it is estimated from what is started, and how. */
  readonly stated: boolean;
  /** Of what is only known between two bounds, the lower, A. */
  readonly least?: number;
}

/** The current of the motor while it starts, A, with its design current as it stands or another. */
export function startingCurrent(study: WayStudy, Ib = study.designCurrent?.value): StartingCurrent | undefined {
  const starting = study.facts.one("starting");
  const { current, method } = starting?.args ?? {};
  if (current)
    return {
      value: current.value,
      unit: "A",
      steps: [],
      source: { ref: "As stated", standing: "printed" },
      stated: true,
    };
  const onlyMotor = study.uses.size === 1 && study.uses.has("motor");
  if (Ib === undefined || !onlyMotor || study.facts.isUnread("starting")) return undefined;
  const factor = practiceOf(`start-${method?.value ?? "direct"}`);
  const value = factor.value * Ib;
  return {
    value,
    unit: "A",
    steps: [
      productStep(
        "starting current",
        [
          [factor.value, plain],
          [Ib, amps],
        ],
        [value, amps],
      ),
    ],
    source: factor.source,
    stated: false,
  };
}

/** What a transformer draws as it is switched on: by how its core was left and when in the cycle, at least and at most. */
export function inrushCurrent(study: WayStudy, Ib = study.designCurrent?.value): StartingCurrent | undefined {
  if (Ib === undefined || study.uses.size !== 1 || !study.uses.has("transformer")) return undefined;
  const [least, most] = [practiceOf("inrush-least"), practiceOf("inrush-most")];
  const [low, high] = [least.value * Ib, most.value * Ib];
  const between = `${plain(least.value)} to ${plain(most.value)} × ${amps(Ib)}`;
  return {
    value: high,
    unit: "A",
    steps: [step("inrush", between, `${amps(low)} to ${amps(high)}`)],
    source: most.source,
    stated: false,
    least: low,
  };
}

/** A starting current beside the instantaneous release of a breaker. */
interface StartTrip {
  /** Multiples of In between which the release opens, and A that follow. */
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly most: number;
  readonly source: Calculated["source"];
  /** No release of the type holds; otherwise one may. */
  readonly certain: boolean;
}

/**
 * How a breaker stands to the start; nothing where it holds, or where only an estimate says that it may not. Of an
 * estimate between two bounds the upper is asked about where no release of the type holds it.
 */
export function tripsOnStart(
  start: StartingCurrent,
  curve: NonNullable<Device["curve"]>,
  rating: number,
): StartTrip | undefined {
  const band = (column: "from" | "to") => known(tripBands, { key: curve }, column);
  const [from, to] = [band("from"), band("to")];
  const [least, most] = [from.value * rating, to.value * rating];
  const certain = exceeds(start.least ?? start.value, most);
  const asked = start.stated ? least : most;
  if (!certain && !exceeds(start.value, asked)) return undefined;
  return { from: from.value, to: to.value, least, most, source: to.source, certain };
}
