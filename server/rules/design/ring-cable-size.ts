import { squareMillimetres } from "../../calc/result.ts";
import { ringRule } from "../../calc/ring.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/ring-cable-size",
  severity: "error",
  since: "0.1",
  title: "The cable of a ring final is smaller than a ring may have.",
  why: "One leg must carry its share for as long as the load is on. Below 2.5 mm² (1.5 mm² mineral-insulated) it cannot, whatever the device.",
  clauses: ["433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  cable        flat-twin  line 1.5 mm²  cpc 1.0 mm²
                               ^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
}`,
    },
  ],
  check(study, report) {
    const { cable } = study;
    if (!study.isRing || !cable) return;
    const limit = ringRule(cable.construction === "mineral" ? "csa-mineral" : "csa");
    const least = Math.min(cable.line, cable.neutral);
    if (least >= limit.value) return;
    const line = cable.line < limit.value ? cable.fact.args.line : cable.fact.args.neutral;
    report(line ? valueSpot(cable.fact, line) : factSpot(cable.fact), {
      message: `A ring final needs conductors of at least ${squareMillimetres(limit.value)}; this one has ${squareMillimetres(least)}.`,
      value: amount(least, "mm²"),
      limit: amountOf(limit),
      least: true,
      steps: limit.steps,
      source: limit.source,
      fixes: line ? [inPlaceOf(line, `${limit.value} mm²`, `Make it ${squareMillimetres(limit.value)}`)] : [],
    });
  },
});
