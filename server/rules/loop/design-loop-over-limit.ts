import { ohms } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { exactReading } from "../../circuit/supply.ts";
import { designLoop } from "../../readings/loop.ts";
import { cableWords } from "../common/dead-words.ts";
import { loopFixes } from "../common/loop-cures.ts";
import { loopOver } from "../common/loop-over.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/design-loop-over-limit",
  severity: "error",
  since: "0.1",
  title: "The calculated Zs of a design is higher than the device allows.",
  why: "It costs a line on paper now, and a new cable after the test. A larger cpc, a shorter route or a device of another type lowers the loop impedance.",
  clauses: ["411.4.4", "411.3.2"],
  examples: [
    {
      bad: `way 1 radial "Gate motor" {
  device       BS EN 60898 C20 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       60 m
  ^^^^^^^^^^^^^^^^^
  serves       door
}`,
      good: `way 1 radial "Gate motor" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       60 m
  serves       door
}`,
    },
  ],
  check(study, report) {
    const { disconnection, device, length } = study;
    // A reading is worth more than a prediction.
    if (exactReading(study.Zs) || disconnection?.by !== "overcurrent" || !device || !length) return;
    const loop = designLoop(study);
    const { limit } = disconnection;
    if (!loop || loop.value <= limit.value) return;
    const over = loopOver(study, device, loop, limit);
    const [lengthFact] = length.facts;
    report(factSpot(lengthFact ?? device.fact), {
      ...over.report,
      message: `The calculated Zs is ${ohms(loop.value)} warm, above ${ohms(limit.value)} for the ${deviceName(device)} device: ${over.words}.`,
      related: [
        ...over.report.related,
        ...(study.cable
          ? [{ spot: factSpot(study.cable.fact), message: `Cable of the circuit: ${cableWords(study.cable)}.` }]
          : []),
      ],
      fixes: loopFixes(study),
    });
  },
});
