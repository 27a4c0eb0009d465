import { type FaultLevels, faultLevels, faultLevelsOn, type Standby } from "../../boards/fault-levels.ts";
import type { BoardNode } from "../../boards/network.ts";
import { standbyOf, standbyOfWay } from "../../boards/standby.ts";
import { exceeds } from "../../calc/compare.ts";
import { kiloamps, relation } from "../../calc/result.ts";
import { breakingOf, conditionalAt } from "../../circuit/breaking.ts";
import { deviceName } from "../../circuit/describe.ts";
import { greatestFault } from "../../circuit/faults.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { combine } from "../../tables/source.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

const sample = (Ipf: string) => `wayfile 1
installation "Pumping station" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ze           0.30 Ω
    Ipf          1.2 kA
    standby      "Turbine set"  Ze 0.02 Ω  Ipf ${Ipf}
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Heater" {
      device       BS EN 60898 B16 6 kA
    }
  }
}`;

export default installationRule({
  id: "fault/standby-breaking-capacity",
  severity: "error",
  since: "0.1",
  title: "On its second source more current may flow than a device can break.",
  why: "A source close by may feed a fault harder than the network does. A device that has to break more than its breaking capacity may burst or weld shut, whichever source supplies it.",
  clauses: ["434.5.1", "551.4.1"],
  examples: [
    {
      bad: sample("8.4 kA").replace("6 kA\n", "6 kA\n                                   ^^^^\n"),
      good: sample("5.2 kA"),
    },
  ],
  checkNode,
});

function checkNode(node: BoardNode, report: Reporter): void {
  // What the network already brings is reported of that.
  const network = [greatestFault(node.context)?.value, faultLevels(node)?.greatest.value];
  for (const source of standbyOf(node.context)) {
    const levels = faultLevelsOn(node, source);
    if (!levels) continue;
    for (const study of node.studies) {
      const capacity = study.isSpare || !standbyOfWay(study).includes(source) ? undefined : breakingOf(study);
      if (capacity && !network.some((one) => one !== undefined && exceeds(one, capacity.value)))
        judge({ study, source, levels }, report);
    }
  }
}

interface Judged {
  readonly study: WayStudy;
  readonly source: Standby;
  readonly levels: FaultLevels;
}

function judge({ study, source, levels }: Judged, report: Reporter): void {
  const { device, context } = study;
  const capacity = breakingOf(study);
  const backed = device?.fact.args.class?.value === "back-up";
  const { greatest } = levels;
  if (!device || !capacity || backed) return;
  if (!exceeds(greatest.value, Math.max(capacity.value, conditionalAt(context) ?? capacity.value))) return;
  const written = device.fact.args.breaking;
  report(written ? valueSpot(device.fact, written) : factSpot(device.fact), {
    message: `On “${source.args.what.value}” ${kiloamps(greatest.value)} may flow here, and the ${deviceName(device)} device breaks ${kiloamps(capacity.value)}.`,
    value: amount(greatest.value, "A"),
    limit: amountOf(capacity),
    steps: [
      ...greatest.steps,
      ...capacity.steps,
      relation("Icn ≥ I", kiloamps(capacity.value), kiloamps(greatest.value)),
    ],
    source: combine(greatest.source, capacity.source),
    // Without its own figure what flows follows from its loop alone.
    ...(source.args.fault ? {} : { severity: "warning" as const }),
    related: [{ spot: factSpot(source), message: "The source that takes over." }],
  });
}
