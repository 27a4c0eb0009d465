import { ohms } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { exactReading } from "../../circuit/supply.ts";
import { designLoop, rcdDisconnects } from "../../readings/loop.ts";
import { combine } from "../../tables/source.ts";
import { cableWords } from "../common/dead-words.ts";
import { loopFixes } from "../common/loop-cures.ts";
import { amountOf, factSpot, wayRule } from "../frame/rule.ts";

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
    const byRcd = rcdDisconnects(study, loop.value);
    const [lengthFact] = length.facts;
    report(factSpot(lengthFact ?? device.fact), {
      message: `The calculated Zs is ${ohms(loop.value)} warm, above ${ohms(limit.value)} for the ${deviceName(device)} device: ${byRcd ? "only the RCD would disconnect" : "it would not disconnect in time"}.`,
      value: amountOf(loop),
      limit: amountOf(limit, "hot"),
      steps: [...loop.steps, ...limit.steps],
      source: combine(loop.source, limit.source),
      ...(byRcd ? { severity: "warning" } : {}),
      related: [
        { spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` },
        ...(study.cable
          ? [{ spot: factSpot(study.cable.fact), message: `Cable of the circuit: ${cableWords(study.cable)}.` }]
          : []),
      ],
      fixes: loopFixes(study),
    });
  },
});
