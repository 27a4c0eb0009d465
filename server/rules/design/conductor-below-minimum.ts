import { squareMillimetres } from "../../calc/result.ts";
import { conductorUse, leastConductor } from "../../circuit/minimum.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/conductor-below-minimum",
  severity: "error",
  since: "0.1",
  title: "A conductor is smaller than the minimum for its use.",
  why: "Thin conductors break at terminals and where they are pulled in, whatever current they carry.",
  clauses: ["524.1"],
  examples: [
    {
      bad: `way 1 radial "Fan heater" {
  device       BS EN 60898 B6 6 kA
  cable        flat-twin  line 1.0 mm²  cpc 1.0 mm²
                               ^^^^^^^
  serves       heating
}`,
      good: `way 1 radial "Lights" {
  device       BS EN 60898 B6 6 kA
  cable        flat-twin  line 1.0 mm²  cpc 1.0 mm²
  serves       lighting
}`,
    },
  ],
  check(study, report) {
    const { cable } = study;
    if (cable?.material !== "copper") return;
    const limit = leastConductor(study);
    if (cable.line >= limit.value) return;
    const { line } = cable.fact.args;
    report(line ? valueSpot(cable.fact, line) : factSpot(cable.fact), {
      message: `${squareMillimetres(cable.line)} is below the minimum of ${squareMillimetres(limit.value)} for ${conductorUse(study)}.`,
      value: amount(cable.line, "mm²"),
      limit: amountOf(limit),
      least: true,
      steps: limit.steps,
      source: limit.source,
      fixes: line ? [inPlaceOf(line, `${limit.value} mm²`, `Make it ${squareMillimetres(limit.value)}`)] : [],
    });
  },
});
