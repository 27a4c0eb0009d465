import { nextRatingUp } from "../../calc/minimum-size.ts";
import { practiceOf } from "../../calc/practice.ts";
import { amps } from "../../calc/result.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

const fixed = ["shower", "water-heater", "appliance", "heating"];

export default wayRule({
  id: "design/device-oversized",
  severity: "information",
  since: "0.1",
  title: "A device is far larger than the fixed load it protects.",
  why: "The cable may be safe, but the appliance and its flex are protected by a device chosen for something else. A fused connection unit or a smaller device protects them.",
  clauses: ["533.1"],
  examples: [
    {
      bad: `way 1 radial "Immersion heater" {
  device       BS EN 60898 B40 6 kA
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  serves       water-heater
  Ib           13 A
}`,
      good: `way 1 radial "Immersion heater" {
  device       BS EN 60898 B20 6 kA
  serves       water-heater
  Ib           13 A
}`,
    },
  ],
  check(study, report) {
    const { device, designCurrent, uses } = study;
    if (!device?.rating || !device.family || !designCurrent || !study.isFinal || study.facts.has("fused")) return;
    const [use, ...others] = uses;
    if (use === undefined || others.length > 0 || !fixed.includes(use) || study.facts.has("points")) return;
    if (designCurrent.value < practiceOf("oversize-from").value) return;
    const limit = practiceOf("oversize");
    const next = nextRatingUp(device.family, designCurrent.value);
    if (next === undefined || device.rating <= limit.value * next) return;
    const { curve, rating } = device.fact.args;
    report(factSpot(device.fact), {
      message: `${amps(device.rating)} is far above the ${amps(designCurrent.value)} of this appliance: ${amps(next)} would protect its flex as well.`,
      value: amount(device.rating, "A"),
      limit: amount(limit.value * next, "A"),
      source: limit.source,
      related: [{ spot: factSpot(designCurrent.fact), message: `Load: ${amps(designCurrent.value)}.` }],
      fixes: curve
        ? [inPlaceOf(curve, `${curve.curve}${next}`, `Make the device ${curve.curve}${next}`)]
        : rating
          ? [inPlaceOf(rating, amps(next), `Make the device ${amps(next)}`)]
          : [],
    });
  },
});
