import { feedsBack } from "../../circuit/circuit-kind.ts";
import { laterRule } from "../../circuit/describe.ts";
import { quotedIn } from "../../tables/source.ts";
import { listed } from "../../text/words.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/source-with-loads",
  severity: "error",
  since: "0.1",
  title: "A source is connected to a circuit that serves loads.",
  why: "The device at the board sees only what comes from the board: source and supply together can overload the cable, and the RCD is fed from both sides. A source is connected on the supply side of the protective devices of final circuits.",

  clauses: ["551.7.2"],
  examples: [
    {
      bad: `way 1 radial "Solar and utility sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A bidirectional
  serves       pv sockets
  ^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Solar" {
  device       BS EN 61009 B20 6 kA 30 mA type A bidirectional
  serves       pv
}`,
    },
  ],
  check(study, report) {
    const serves = study.facts.one("serves");
    if (!serves || !study.isFinal || !feedsBack(study)) return;
    const loads = [...study.uses].filter((use) => !["pv", "storage", "control", "data"].includes(use));
    if (loads.length === 0) return;
    const later = laterRule(study.context);
    report(factSpot(serves), {
      message: `A source feeds this circuit beside ${listed(loads)}: give the source a circuit of its own.${later.words}`,
      source: quotedIn("551.7.2"),
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});
