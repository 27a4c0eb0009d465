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
    const { setting, lines, inWindings, Ib, spot } = relay;
    if (!exceeds(lines, allowance.value * Ib.value)) return;
    const allowed = inWindings
      ? `, which before the windings of a star-delta starter lets ${amps(lines, Ib.value)} flow in the lines`
      : "";
    const plate = inWindings
      ? "0.58 times the current on the plate, or to all of it in the lines"
      : "the current on the plate";
    report(spot, {
      message: `The relay is set to ${amps(setting, Ib.value)}${allowed}, and the motor draws ${amps(Ib.value, lines)}: set it to ${plate}.`,
      value: amount(lines, "A"),
      limit: amount(allowance.value * Ib.value, "A"),
      steps: allowance.steps,
      source: allowance.source,
    });
  },
});
