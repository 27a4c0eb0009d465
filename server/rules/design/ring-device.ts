import { amps } from "../../calc/result.ts";
import { ringRatings } from "../../calc/ring.ts";
import { ringRules } from "../../tables/ring.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/ring-device",
  severity: "error",
  since: "0.1",
  title: "A ring final is protected by a device above 32 A.",
  why: "A ring is safe only because its device and its two legs were chosen together: a larger device allows one leg to carry more than its capacity.",
  clauses: ["433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  device       BS EN 60898 B40 6 kA
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
}`,
    },
  ],
  check(study, report) {
    const { device } = study;
    const most = Math.max(...ringRatings);
    if (!study.isRing || !device?.rating || device.rating <= most) return;
    const row = rowOf(ringRules, { key: "device" });
    const { curve } = device.fact.args;
    report(factSpot(device.fact), {
      message: `A ring final is protected by a 30 or 32 A device; this one is ${amps(device.rating)}: fit ${amps(most)}, or divide it into two circuits.`,
      value: amount(device.rating, "A"),
      limit: amount(most, "A"),
      ...(row ? { source: sourceOf(ringRules, row, "value") } : {}),
      fixes: curve ? [inPlaceOf(curve, `${curve.curve}${most}`, `Make the device ${curve.curve}${most}`)] : [],
    });
  },
});
