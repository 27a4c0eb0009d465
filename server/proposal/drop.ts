/** The drop of a circuit with a proposed cable, with that of the feeders before it, against the guidance. */

import type { Use } from "../../grammar/choices.ts";
import { feederDrop } from "../boards/drop-feeder.ts";
import { added, type BoardDrop, dropLimitOf } from "../boards/drop-path.ts";
import type { Calculated } from "../calc/result.ts";
import { cableDrop } from "../circuit/drop.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Demand } from "./demand.ts";

interface DropFound {
  readonly drop: Calculated;
  readonly limit: Calculated;
}

/** What the guidance for the drop does not speak of: other limits, or a cable that raises the voltage. */
const apart: readonly Use[] = ["selv", "pv", "storage"];

export function dropFor(
  trial: WayStudy,
  { forDrop, fed, how }: Demand,
  above: BoardDrop | undefined,
): DropFound | { readonly missing: string } {
  if (!trial.length) return { missing: noLength };
  if (apart.some((use) => trial.uses.has(use))) return { missing: "The guidance for the drop is not for this use." };
  // As the board behind a feeder loads its lines: with all of it on one line the neutral drops as much again.
  const unequal = fed && how !== "wanted" ? feederDrop({ ...fed, feeder: trial }) : undefined;
  const own = unequal && !("missing" in unequal) ? unequal.worst : cableDrop(trial, forDrop);
  if ("missing" in own) return { missing: `The voltage drop was not calculated: ${own.missing}.` };
  return { drop: above ? added(above.drop, own.drop) : own.drop, limit: dropLimitOf(trial) };
}

export const noLength = "The length is not written: neither the voltage drop nor the loop was calculated.";

/** What is stated of the feeders upstream of the board. */
export function upstreamNote(trial: WayStudy, above: BoardDrop | undefined): string | undefined {
  if (!above) {
    return trial.context.upstream.length > 0
      ? "The drop of the cables before this board was left out: add it where the limit is near."
      : undefined;
  }
  if (!above.whole) return "A feeder before this board could not be calculated: the drop is at least this.";
  return above.certain ? undefined : "The drop in the feeders is that of all loads together, without diversity.";
}
