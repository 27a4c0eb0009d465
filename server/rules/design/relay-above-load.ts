import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { amps } from "../../calc/result.ts";
import { unstatedInput } from "../../circuit/motor-input.ts";
import { conveyor, relayOf } from "../common/relay.ts";
import { amount, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/relay-above-load",
  severity: "warning",
  since: "0.1",
  title: "An overload relay is set far above the current of its motor.",
  why: "A motor that is jammed or runs on two lines draws less than the relay is set to, and burns out before anything opens.",
  clauses: ["552.1.2"],
  examples: [{ bad: conveyor("18 A\n               ^^^^"), good: conveyor("14.5 A") }],
  check(study, report) {
    const relay = relayOf(study);
    // What a motor draws is known from its plate alone, and a relay stands before one of them.
    if (!relay || unstatedInput(study)) return;
    if (study.facts.all("load").length > 1 || study.facts.isUnread("Ib") || study.facts.isUnread("load")) return;
    const allowance = practiceOf("relay-above");
    const { setting, Ib, spot } = relay;
    if (!exceeds(setting, allowance.value * Ib.value)) return;
    report(spot, {
      message: `The relay is set to ${amps(setting, Ib.value)}, and the motor draws ${amps(Ib.value, setting)}: set it to the current on the plate.`,
      value: amount(setting, "A"),
      limit: amount(allowance.value * Ib.value, "A"),
      steps: allowance.steps,
      source: allowance.source,
    });
  },
});
