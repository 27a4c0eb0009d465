import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { amps } from "../../calc/result.ts";
import { relayHolds } from "../../circuit/overload-relay.ts";
import { quotedIn } from "../../tables/source.ts";
import { conveyor, relayOf } from "../common/relay.ts";
import { amount, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/relay-below-load",
  severity: "warning",
  since: "0.1",
  title: "An overload relay is set below the design current.",
  why: "It stops the motor in normal service, and sooner or later someone turns it up beyond what motor and cable withstand.",
  clauses: ["433.1.1", "552.1.2"],
  examples: [{ bad: conveyor("11 A\n               ^^^^"), good: conveyor("14.5 A") }],
  check(study, report) {
    const relay = relayOf(study);
    if (!relay) return;
    const { setting, lines, inWindings, Ib, spot } = relay;
    if (!exceeds(Ib.value, relayHolds(lines))) return;
    const allowed = inWindings ? `, which before the windings lets ${amps(lines, Ib.value)} flow in the lines` : "";
    report(spot, {
      message: `The relay is set to ${amps(setting, Ib.value)}${allowed}, below the design current of ${amps(Ib.value, lines)}: it would trip in normal service.`,
      value: amount(Ib.value, "A"),
      limit: amount(lines, "A"),
      steps: practiceOf("relay-holds").steps,
      source: quotedIn("433.1.1"),
    });
  },
});
