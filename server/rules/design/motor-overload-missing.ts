import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { plain } from "../../calc/result.ts";
import { laterRule } from "../../circuit/describe.ts";
import { ruleAlone } from "../../tables/source.ts";
import { amount, amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/motor-overload-missing",
  severity: "warning",
  since: "0.1",
  title: "A motor has no overload protection stated.",
  why: "A motor that is stalled or has lost a line burns without tripping the device at the board. Every motor above 0.37 kW has an overload relay, or another means, set to its current.",

  clauses: ["552.1.2"],
  examples: [
    {
      bad: `way 1 radial "Compressor" {
  device       BS EN 60898 D16 6 kA
  serves       motor
  load         2.2 kW "Compressor"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Compressor" {
  device       BS EN 60898 D16 6 kA
  serves       motor
  load         2.2 kW "Compressor"
  overload     10 A
}`,
    },
  ],
  check({ facts, uses, isFinal, context }, report) {
    if (!isFinal || uses.size !== 1 || !uses.has("motor") || facts.has("overload")) return;
    // A drive watches the current of its motor itself.
    if (facts.one("starting")?.args.method.value === "drive") return;
    const limit = practiceOf("motor-overload");
    const load = facts.all("load").find(({ args }) => args.power && exceeds(args.power.value, limit.value));
    const power = load?.args.power;
    if (!load || !power) return;
    const later = laterRule(context);
    report(factSpot(load), {
      message: `A motor of ${plain(power.value / 1000)} kW needs overload protection: state the setting of its relay, no more than the current on its plate, as overload and that figure.`,
      value: amount(power.value, "W"),
      limit: amountOf(limit),
      ...(later.severity ? { severity: later.severity } : {}),
      source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 552.1.2", standing: "memory" }),
    });
  },
});
