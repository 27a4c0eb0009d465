import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { amps } from "../../calc/result.ts";
import { unstatedInput } from "../../circuit/motor-input.ts";
import { relaySetting } from "../../circuit/overload-relay.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/relay-above-load",
  severity: "warning",
  since: "0.1",
  title: "An overload relay is set far above the current of its motor.",
  why: "A motor that is jammed or runs on two lines draws less than the relay is set to, and burns out before anything opens.",
  clauses: ["552.1.2"],
  examples: [
    {
      bad: `way 1 radial "Conveyor" {
  device       BS EN 60898 D20 10 kA
  serves       motor
  overload     18 A
               ^^^^
  Ib           14 A
}`,
      good: `way 1 radial "Conveyor" {
  device       BS EN 60898 D20 10 kA
  serves       motor
  overload     14.5 A
  Ib           14 A
}`,
    },
  ],
  check(study, report) {
    const overload = study.facts.one("overload");
    const setting = relaySetting(study);
    const Ib = study.designCurrent;
    // What a motor draws is known from its plate alone, and a relay stands before one of them.
    if (!overload || setting === undefined || !Ib || study.isSpare || unstatedInput(study)) return;
    if (study.facts.all("load").length > 1 || study.facts.isUnread("Ib") || study.facts.isUnread("load")) return;
    const allowance = practiceOf("relay-above");
    if (!exceeds(setting, allowance.value * Ib.value)) return;
    report(valueSpot(overload, overload.args.setting), {
      message: `The relay is set to ${amps(setting)}, and the motor draws ${amps(Ib.value)}: set it to the current on the plate.`,
      value: amount(setting, "A"),
      limit: amount(allowance.value * Ib.value, "A"),
      steps: allowance.steps,
      source: allowance.source,
    });
  },
});
