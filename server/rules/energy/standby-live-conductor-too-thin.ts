import { liveHeat } from "../../boards/energy.ts";
import type { Standby } from "../../boards/fault-levels.ts";
import type { BoardNode } from "../../boards/network.ts";
import { standbyOfWay } from "../../boards/standby.ts";
import { fallsShort } from "../../calc/compare.ts";
import { nextSizeUp } from "../../calc/minimum-size.ts";
import { kiloamps, squareMillimetres } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { overloadProtected } from "../../circuit/overload-relations.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { resizeCable } from "../common/cable-size.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

const sample = (size: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ze           0.05 Ω
    Ipf          4.6 kA
    standby      "Diesel set"  Ze 0.60 Ω
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Compressor" {
      device       BS 88-2 63 A 80 kA gM
      cable        armoured 70 °C  line ${size}  cpc 16 mm²
      length       12 m
      serves       motor
      Ib           18 A
    }
  }
}`;

export default installationRule({
  id: "energy/standby-live-conductor-too-thin",
  severity: "error",
  since: "0.1",
  title: "On its second source the smallest fault current would overheat a live conductor.",
  why: "A generator feeds a fault with less current than the network, so a fuse takes longer, and the conductor takes up more energy meanwhile. It has to withstand that on each source.",
  clauses: ["434.5.2", "551.4.1"],
  examples: [
    {
      bad: sample("4 mm²").replace("cpc 16 mm²\n", "cpc 16 mm²\n                                        ^^^^^\n"),
      good: sample("10 mm²"),
    },
  ],
  checkNode(node, report) {
    if (!node.context.supply?.has("standby")) return;
    for (const study of node.studies) for (const source of standbyOfWay(study)) judge(node, study, source, report);
  },
});

/** Of fuses alone the slow end is known; and what fails on the network is reported of that. */
function judge(node: BoardNode, study: WayStudy, source: Standby, report: Reporter): void {
  const { cable, device } = study;
  if (!cable || !device?.family || /breaker/.test(device.family) || overloadProtected(study)) return;
  const heat = liveHeat(node, study, source);
  if (!heat || heat.trip.atMost || !fallsShort(cable.line, heat.need.value)) return;
  const before = liveHeat(node, study);
  if (before && !before.trip.atMost && fallsShort(cable.line, before.need.value)) return;
  const { fault, need } = heat;
  const line = cable.fact.args.line;
  report(line ? valueSpot(cable.fact, line) : factSpot(cable.fact), {
    message: `On “${source.args.what.value}” ${squareMillimetres(cable.line)} would overheat: the ${kiloamps(fault.value)} fault ${heat.where} needs ${squareMillimetres(need.value)} with the ${deviceName(device)} device.`,
    value: amount(cable.line, "mm²"),
    limit: amountOf(need),
    least: true,
    steps: need.steps,
    source: need.source,
    related: [{ spot: factSpot(source), message: "The source that takes over." }],
    fixes: resizeCable(cable, nextSizeUp(need.value)),
  });
}
