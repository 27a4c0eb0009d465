import { heatBehindFuse } from "../../boards/energy.ts";
import type { BoardNode, StudiedBoard } from "../../boards/network.ts";
import { nextSizeUp } from "../../calc/minimum-size.ts";
import { kiloamps, squareMillimetres } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { memoOfBoard } from "../../circuit/kept.ts";
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import type { Way } from "../../model/file.ts";
import { resizeCable } from "../common/cable-size.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

const sample = (size: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ze           0.30 Ω
    Ipf          1.2 kA
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Compressor" {
      device       BS 88-2 63 A 80 kA gM
      cable        armoured 70 °C  line ${size}  cpc 16 mm²
      length       30 m
      serves       motor
      Ib           18 A
    }
  }
}`;

export default installationRule({
  id: "energy/live-conductor-too-thin",
  severity: "error",
  since: "0.1",
  title: "The smallest fault current at the end of a circuit would overheat a live conductor.",
  why: "A small fault current lasts longest. With the current and the time of the same fault, from the device's own curve, the conductor must not take up more energy than it withstands.",
  clauses: ["434.5.2"],
  examples: [
    {
      bad: sample("2.5 mm²").replace("cpc 16 mm²\n", "cpc 16 mm²\n                                        ^^^^^^^\n"),
      good: sample("10 mm²"),
    },
  ],
  checkNode(node, report) {
    for (const way of fusesOn(node)) checkWay(node, studyWay(way, node.context), report);
  },
});

/** Those it could be asked of. */
const fusesOn = memoOfBoard(({ studies }: StudiedBoard): readonly Way[] =>
  studies.flatMap(({ way, device }) => (device?.family !== undefined && !/breaker/.test(device.family) ? [way] : [])),
);

function checkWay(node: BoardNode, study: WayStudy, report: Reporter): void {
  const { cable, device } = study;
  const heat = heatBehindFuse(node, study);
  if (!heat?.fails || !cable || !device) return;
  const { fault, need } = heat;
  const size = nextSizeUp(need.value);
  const line = cable.fact.args.line;
  report(line ? valueSpot(cable.fact, line) : factSpot(cable.fact), {
    message: `${squareMillimetres(cable.line)} would overheat: the ${kiloamps(fault.value)} fault ${heat.where} needs ${squareMillimetres(need.value)} with the ${deviceName(device)} device.`,
    value: amount(cable.line, "mm²"),
    limit: amountOf(need),
    least: true,
    steps: need.steps,
    source: need.source,
    related: [{ spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` }],
    fixes: resizeCable(cable, size),
  });
}
