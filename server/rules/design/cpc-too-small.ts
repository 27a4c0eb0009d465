import { deviceName } from "../../analysis/describe.ts";
import { protectiveNeed } from "../../analysis/protective.ts";
import { nextSizeUp } from "../../calc/index.ts";
import { remark, squareMillimetres } from "../../calc/result.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../rule.ts";
import { inPlaceOf } from "../writing.ts";

export default wayRule({
  id: "design/cpc-too-small",
  severity: "error",
  since: "0.1",
  title: "A protective conductor too thin for the fault it must carry.",
  why: "In a fault it glows before the device has opened, and afterwards there is no earth at all. It is sized by Table 54.7, or by the heat of the fault: current and time of the same fault, the k of the conductor, and the result rounded up, never down.",
  clauses: ["543.1.1", "543.1.3", "543.1.4"],
  examples: [
    {
      setting: { work: "existing" },
      bad: `way 1 radial "Cooker" {
  device  BS 88-3 32 A
  cable   flat-twin line 6 mm² cpc 1.0 mm²
                                   ^^^^^^^
  serves  cooker
}`,
      good: `way 1 radial "Cooker" {
  device  BS 88-3 32 A
  cable   flat-twin line 6 mm² cpc 2.5 mm²
  serves  cooker
}`,
    },
    {
      bad: `way 1 radial "Compressor" {
  device  BS EN 60898 D32 6 kA
  cable   flat-twin line 6 mm² cpc 1.5 mm²
                                   ^^^^^^^
  serves  motor
}`,
      good: `way 1 radial "Compressor" {
  device  BS EN 60898 C32 6 kA
  cable   flat-twin line 6 mm² cpc 1.5 mm²
  serves  motor
}`,
    },
  ],
  check(study, report) {
    const { cable, device } = study;
    const found = protectiveNeed(study);
    if (!found || !cable || cable.cpc === undefined || !device?.rating || cable.cpc >= found.need.value) return;
    const { need, method, certain } = found;
    const size = nextSizeUp(need.value);
    const cpc = cable.fact.args.cpc;
    const table = method === "table";
    // Without the edition or the earthing nothing else is judged either, and that is said there.
    if (table && (!study.context.edition || !study.supply.earthing)) return;
    report(cpc ? valueSpot(cable.fact, cpc) : factSpot(cable.fact), {
      message: table
        ? `A ${squareMillimetres(cable.cpc)} protective conductor is below the ${squareMillimetres(need.value)} of Table 54.7, and the device's fault current and time are not known here: show by calculation that it is enough.`
        : `A ${squareMillimetres(cable.cpc)} protective conductor is too thin: the fault that just trips the ${deviceName(device)} device needs ${squareMillimetres(need.value)}${size ? `, so ${squareMillimetres(size)}` : ""}.`,
      value: amount(cable.cpc, "mm²"),
      limit: amountOf(need),
      least: true,
      steps: [remark(table ? "by Table 54.7" : "by the adiabatic equation, 543.1.3"), ...need.steps],
      source: need.source,
      severity: table ? "information" : certain ? "error" : "warning",
      related: [{ spot: factSpot(device.fact), message: "The device that clears the fault." }],
      fixes: cpc && size ? [inPlaceOf(cpc, `${size} mm²`, `Make the cpc ${squareMillimetres(size)}`)] : [],
    });
  },
});
