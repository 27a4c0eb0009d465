import { exceeds } from "../../calc/compare.ts";
import { amps } from "../../calc/result.ts";
import { relaySetting } from "../../circuit/overload-relay.ts";
import { quotedIn } from "../../tables/source.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/relay-below-load",
  severity: "warning",
  since: "0.1",
  title: "An overload relay is set below the design current.",
  why: "It stops the motor in normal service, and sooner or later someone turns it up beyond what motor and cable withstand.",

  clauses: ["433.1.1", "552.1.2"],
  examples: [
    {
      bad: `way 1 radial "Conveyor" {
  device       BS EN 60898 D20 10 kA
  serves       motor
  overload     11 A
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
    if (!overload || setting === undefined || !Ib || study.isSpare || !exceeds(Ib.value, setting)) return;
    report(valueSpot(overload, overload.args.setting), {
      message: `The relay is set to ${amps(setting)}, below the design current of ${amps(Ib.value)}: it would trip in normal service.`,
      value: amount(Ib.value, "A"),
      limit: amount(setting, "A"),
      source: quotedIn("433.1.1"),
    });
  },
});
