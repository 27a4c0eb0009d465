import { byBreaking } from "../../boards/energy.ts";
import { faultLevels } from "../../boards/fault-levels.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { kiloamps, step } from "../../calc/result.ts";
import { breakingOf, conditionalAt, nextBreaking } from "../../circuit/breaking.ts";
import { deviceName } from "../../circuit/describe.ts";
import { greatestFault } from "../../circuit/faults.ts";
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import { combine } from "../../tables/source.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

const sample = (breaking: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    phases       three
    Ipf          9.5 kA
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" {
      device       BS 88-2 100 A 80 kA gG
      feeds        B
      cable        armoured 90 °C  line 35 mm²  cpc 35 mm²  cores 4
      length       6 m
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Kiln" {
      device       BS EN 60898 B32 ${breaking}
      phase        L1
    }
  }
}`;

export default installationRule({
  id: "coordination/breaking-capacity-exceeded",
  severity: "warning",
  since: "0.1",
  title: "The calculated fault current exceeds the breaking capacity of a device.",
  why: "No fault current is recorded at this board; it was calculated from the figure recorded upstream and the cable between. A device that has to break more than its breaking capacity may burst or weld shut.",
  clauses: ["434.5.1", "434.1"],
  examples: [
    { bad: sample("6 kA").replace("6 kA\n", "6 kA\n                                   ^^^^\n"), good: sample("10 kA") },
  ],
  checkNode,
});

function checkNode(node: BoardNode, report: Reporter): void {
  // A recorded figure is judged by another check.
  const levels = greatestFault(node.context) ? undefined : faultLevels(node);
  if (!levels) return;
  const conditional = conditionalAt(node.context);
  if (conditional !== undefined && levels.bound.value <= conditional) return;
  for (const { way, current } of byBreaking(node)) {
    if (!exceeds(levels.bound.value, current)) break;
    device(node, studyWay(way, node.context), report);
  }
}

function device(node: BoardNode, study: WayStudy, report: Reporter): void {
  const { device } = study;
  const levels = faultLevels(node);
  const capacity = device && breakingOf(study);
  if (!levels || !device || !capacity || study.isSpare || device.fact.args.class?.value === "back-up") return;
  const { greatest, bound } = levels;
  if (!exceeds(bound.value, capacity.value)) return;
  const surely = exceeds(greatest.value, capacity.value);
  const found = surely ? greatest : bound;
  const written = device.fact.args.breaking;
  const next = nextBreaking(bound.value);
  report(written ? valueSpot(device.fact, written) : factSpot(device.fact), {
    message: `The ${deviceName(device)} device breaks ${kiloamps(capacity.value)}; by calculation ${surely ? "about" : "up to"} ${kiloamps(found.value)} may flow at board ${node.board.head.name}: measure it there.`,
    value: amount(found.value, "A"),
    limit: amountOf(capacity),
    steps: [
      ...found.steps,
      ...capacity.steps,
      step("Icn ≥ I", `${kiloamps(capacity.value)} against ${kiloamps(found.value)}`, "does not hold"),
    ],
    source: combine(found.source, capacity.source),
    ...(surely ? {} : { severity: "information" as const }),
    related: node.feeder ? [{ spot: factSpot(node.feeder.way.header), message: "Feeder of this board." }] : [],
    fixes:
      written && next && device.family === "breaker"
        ? [inPlaceOf(written, kiloamps(next), `Make it ${kiloamps(next)}`)]
        : [],
  });
}
