import { laterRule } from "../../circuit/describe.ts";
import { ruleAlone } from "../../tables/source.ts";
import { listed } from "../../text/words.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/lift-shares-circuit",
  severity: "warning",
  since: "0.1",
  title: "A lift shares its circuit with other loads.",
  why: "A fault in what is plugged in stops the lift with people in it, and whoever isolates the machine to work on it stands in the dark of the shaft: the lights and sockets of the car, the shaft and the machinery have supplies of their own.",
  clauses: ["314.1"],
  examples: [
    {
      bad: `way 1 radial "Lift" {
  device       BS EN 60898 C63 10 kA
  serves       lift sockets
  ^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Lift" {
  device       BS EN 60898 C63 10 kA
  serves       lift
}`,
    },
  ],
  check(study, report) {
    const { facts, uses, isFinal } = study;
    const serves = facts.one("serves");
    if (!serves || !isFinal || !uses.has("lift")) return;
    const others = [...uses].filter((use) => !ofLift.includes(use));
    if (others.length === 0) return;
    const later = laterRule(study);
    report(factSpot(serves), {
      message: `A lift needs a circuit of its own: this one serves ${listed(others)} as well. The lights and sockets of its car, shaft and machinery have others.${later.words}`,
      source: ruleAlone({
        ref: "BS EN 81-20, separate supplies of lift machine, lighting and socket-outlets",
        standing: "memory",
      }),
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});

/** What is a part of the lift itself. */
const ofLift: readonly string[] = ["lift", "motor", "control", "alarms"];
