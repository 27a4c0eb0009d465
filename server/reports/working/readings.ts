/** The readings that were made, each beside what it is compared with, with what is left. */

import { rcdTripBand } from "../../calc/rcd-time.ts";
import { type Calculated, megohms, milliamps, milliseconds } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { insulationLimit, insulationOf } from "../../readings/insulation.ts";
import { rcdTestsOfWay, windowOf } from "../../readings/rcd-tests.ts";
import { type Block, calculate, gap, paragraph, part, type Section, table } from "../setting/document.ts";
import { deadRows, insulationRows } from "./readings-dead.ts";
import { liveRows, rcdRows, verdictRows } from "./readings-live.ts";

export const readingsPart = (study: WayStudy): Section[] => part("Readings made", readingBlocks(study));

function readingBlocks(study: WayStudy): Block[] {
  if (study.deadTests.length + study.liveTests.length === 0) return [paragraph("No tests are recorded for this way.")];
  const rows = [
    ...deadRows(study),
    ...insulationRows(study),
    ...liveRows(study),
    ...rcdRows(study),
    ...verdictRows(study),
  ];
  const tests = [
    ...study.deadTests.map((test) => ["dead", test] as const),
    ...study.liveTests.map((test) => ["live", test] as const),
  ];
  const days = tests.map(
    ([kind, { on, with: meters }]) =>
      `${kind} ${on || "on no day"}${meters.length > 0 ? ` with ${meters.join(" and ")}` : ""}`,
  );
  return [
    paragraph(`Tests: ${days.join("; ")}. The latest of each reading is shown.`),
    ...table(["reading", "as read", "limit", "margin"], rows),
    ...limitBlocks(study),
    ...(study.facts.broken.some((word) => word === "dead" || word === "live") ||
    tests.some(([, test]) => test.facts.broken.length > 0)
      ? [gap("Some readings", "their lines could not be read")]
      : []),
  ];
}

const resultOf = ({ value, unit }: Calculated): string =>
  unit === "Ω" ? megohms(value) : unit === "A" ? milliamps(value) : milliseconds(value);

/** The limits that no part before this one works out, each with its source. */
function limitBlocks(study: WayStudy): Block[] {
  const rule = insulationOf(study) ? insulationLimit(study) : undefined;
  const tests = rcdTestsOfWay(study);
  const windows = tests.flatMap((test) => windowOf(test, study.context) ?? []);
  const [rcd] = study.rcds;
  const band = study.live?.facts.has("trip-current") && rcd?.type ? rcdTripBand(rcd.type, rcd.sensitivity) : undefined;
  const figures: readonly [string, Calculated | undefined][] = [
    ["Least insulation resistance", rule?.minimum],
    ...windows.flatMap(({ least, greatest }): [string, Calculated | undefined][] => [
      ["Shortest time of the RCD", least],
      ["Longest time of the RCD", greatest],
    ]),
    ["Least trip current", band?.least],
    ["Greatest trip current", band?.greatest],
  ];
  return figures.flatMap(([name, figure]) => (figure ? [calculate(name, figure, resultOf(figure), "")] : []));
}
