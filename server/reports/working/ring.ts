/** What a ring final has to satisfy besides its currents. */

import { fallsShort } from "../../calc/compare.ts";
import { ringRatings, ringRule } from "../../calc/index.ts";
import { amps, plain, squareMillimetres } from "../../calc/result.ts";
import { leastKnownCapacity } from "../../circuit/overload.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { ringRules } from "../../tables/ring.ts";
import { combine } from "../../tables/source.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { type Block, compareWithLimit, gap, part, type Section } from "../setting/document.ts";

export const ringPart = (study: WayStudy): Section[] =>
  study.isRing ? part("Conditions of a ring final", ringBlocks(study)) : [];

function ringBlocks(study: WayStudy): Block[] {
  const { device, cable, facts } = study;
  const blocks: Block[] = [];
  if (device?.rating !== undefined) {
    const row = rowOf(ringRules, { key: "device" });
    const fits = device.rating <= Math.max(...ringRatings);
    blocks.push(
      compareWithLimit(
        fits,
        `Device ${amps(device.rating)}, ${fits ? "not above" : "above"} ${amps(Math.max(...ringRatings))}`,
        row && sourceOf(ringRules, row, "value"),
        { value: device.rating, limit: Math.max(...ringRatings) },
      ),
    );
  }
  if (cable) {
    const least = ringRule(cable.construction === "mineral" ? "csa-mineral" : "csa");
    const size = Math.min(cable.line, cable.neutral);
    const fits = size >= least.value;
    blocks.push(
      compareWithLimit(
        fits,
        `Line and neutral ${squareMillimetres(size)} ${fits ? "≥" : "<"} ${squareMillimetres(least.value)}`,
        least.source,
        { value: size, limit: least.value },
      ),
    );
  }
  const Iz = leastKnownCapacity(study)?.value;
  const needed = ringRule("capacity");
  if (!Iz) blocks.push(gap("Iz of the ring's cable against its least", "the capacity of the route is not known"));
  else {
    const fits = !fallsShort(Iz.value, needed.value);
    if (fits && !study.capacity)
      blocks.push(gap("Iz of the ring's cable", "a stretch of the route could not be calculated"));
    else
      blocks.push(
        compareWithLimit(
          fits,
          `Iz ${amps(Iz.value)} ${fits ? "≥" : "<"} ${amps(needed.value)}`,
          combine(needed.source, Iz.source),
          { value: Iz.value, limit: needed.value },
          `${amps(Iz.value - needed.value)} left`,
        ),
      );
  }
  const floor = facts.one("floor-area")?.args.value.value;
  if (floor !== undefined) {
    const most = ringRule("area");
    const fits = floor <= most.value;
    const judged = compareWithLimit(
      fits,
      `Floor ${plain(floor)} m² ${fits ? "≤" : ">"} ${plain(most.value)} m²`,
      most.source,
      { value: floor, limit: most.value },
    );
    blocks.push(
      judged.verdict === "fails"
        ? { ...judged, verdict: "advises", remark: "the design current has to be shown" }
        : judged,
    );
  }
  return blocks;
}
