import { ohms } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { exactReading } from "../../circuit/supply.ts";
import { designLoop, rcdDisconnects } from "../../readings/loop.ts";
import { combine } from "../../tables/source.ts";
import { loopFixes } from "../common/loop-cures.ts";
import { amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/design-loop-over-limit",
  severity: "error",
  since: "0.1",
  title: "A circuit designed so long that its device will not disconnect in time.",
  why: "It costs a line on paper now, and a new cable after the test. A larger cpc, a shorter route or a device of another type brings the loop down.",
  clauses: ["411.4.4", "411.3.2"],
  examples: [
    {
      bad: `way 1 radial "Gate motor" {
  device  BS EN 60898 C20 6 kA
  cable   flat-twin line 2.5 mm² cpc 1.5 mm²
  length  60 m
  ^^^^^^^^^^^^
  serves  door
}`,
      good: `way 1 radial "Gate motor" {
  device  BS EN 60898 B16 6 kA
  cable   flat-twin line 2.5 mm² cpc 1.5 mm²
  length  60 m
  serves  door
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
      message: `With this length Zs comes to ${ohms(loop.value)} warm, above the ${ohms(limit.value)} of the ${deviceName(device)} device${byRcd ? ": only the RCD would disconnect" : ": it would not disconnect in time"}.`,
      value: amountOf(loop),
      limit: amountOf(limit),
      steps: [...loop.steps, ...limit.steps],
      source: combine(loop.source, limit.source),
      ...(byRcd ? { severity: "warning" } : {}),
      related: [
        { spot: factSpot(device.fact), message: `The device that must disconnect: ${deviceName(device)}.` },
        ...(study.cable ? [{ spot: factSpot(study.cable.fact), message: "The cable the loop runs through." }] : []),
      ],
      fixes: loopFixes(study),
    });
  },
});
