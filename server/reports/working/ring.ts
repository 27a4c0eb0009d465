/** What a ring final has to satisfy besides its currents. */

import { fallsShort } from "../../calc/compare.ts";
import { amps, plain, squareMillimetres } from "../../calc/result.ts";
import { ringRatings, ringRule } from "../../calc/ring.ts";
import { leastKnownCapacity } from "../../circuit/overload.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { ringRules } from "../../tables/ring.ts";
import { combine } from "../../tables/source.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { type Block, compareWithLimit, gap, part, type Section } from "../setting/document.ts";

export const ringPart = (study: WayStudy): Section[] =>
  study.isRing ? part("Conditions of a ring final", ringBlocks(study)) : [];

const ringBlocks = (study: WayStudy): Block[] => [
  ...deviceBlock(study),
  ...sizeBlock(study),
  capacityBlock(study),
  ...floorBlock(study),
];

function deviceBlock({ device }: WayStudy): Block[] {
  if (device?.rating === undefined) return [];
  const row = rowOf(ringRules, { key: "device" });
  const most = Math.max(...ringRatings);
  const fits = device.rating <= most;
  return [
    compareWithLimit(
      fits,
      `Device ${amps(device.rating)}, ${fits ? "not above" : "above"} ${amps(most)}`,
      row && sourceOf(ringRules, row, "value"),
      { value: device.rating, limit: most },
    ),
  ];
}

function sizeBlock({ cable }: WayStudy): Block[] {
  if (!cable) return [];
  const least = ringRule(cable.construction === "mineral" ? "csa-mineral" : "csa");
  const size = Math.min(cable.line, cable.neutral);
  const fits = size >= least.value;
  return [
    compareWithLimit(
      fits,
      `Line and neutral ${squareMillimetres(size)} ${fits ? "≥" : "<"} ${squareMillimetres(least.value)}`,
      least.source,
      { value: size, limit: least.value },
    ),
  ];
}

function capacityBlock(study: WayStudy): Block {
  const Iz = leastKnownCapacity(study)?.value;
  const needed = ringRule("capacity");
  if (!Iz) return gap("Iz of the ring's cable against its least", "the capacity of the route is not known");
  const fits = !fallsShort(Iz.value, needed.value);
  if (fits && !study.capacity) return gap("Iz of the ring's cable", "a stretch of the route could not be calculated");
  return compareWithLimit(
    fits,
    `Iz ${amps(Iz.value)} ${fits ? "≥" : "<"} ${amps(needed.value)}`,
    combine(needed.source, Iz.source),
    { value: Iz.value, limit: needed.value },
    `${amps(Iz.value - needed.value)} left`,
  );
}

/** A larger floor is no fault where the design current is shown. */
function floorBlock({ facts }: WayStudy): Block[] {
  const floor = facts.one("floor-area")?.args.value.value;
  if (floor === undefined) return [];
  const most = ringRule("area");
  const fits = floor <= most.value;
  const judged = compareWithLimit(
    fits,
    `Floor ${plain(floor)} m² ${fits ? "≤" : ">"} ${plain(most.value)} m²`,
    most.source,
    { value: floor, limit: most.value },
  );
  if (judged.verdict !== "fails") return [judged];
  return [{ ...judged, verdict: "advises", remark: "the design current has to be shown" }];
}
