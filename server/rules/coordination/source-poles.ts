import { feedsBack } from "../../circuit/circuit-kind.ts";
import { laterRule } from "../../circuit/describe.ts";
import { ruleAlone } from "../../tables/source.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "coordination/source-poles",
  severity: "warning",
  since: "0.1",
  title: "The RCD of a source leaves the neutral connected.",
  why: "A generator or battery goes on feeding the fault through the neutral after a single-pole device has opened. What protects a source opens every live conductor, the neutral among them.",
  clauses: ["551.7.1"],
  examples: [
    {
      bad: `way 1 radial "Roof array" {
  device       BS EN 61009 B16 single-pole 6 kA 30 mA type A bidirectional
                               ^^^^^^^^^^^
  serves       pv
}`,
      good: `way 1 radial "Roof array" {
  device       BS EN 61009 B16 double-pole 6 kA 30 mA type A bidirectional
  serves       pv
}`,
    },
  ],
  check(study, report) {
    const fact = study.device?.fact;
    const { poles, sensitivity } = fact?.args ?? {};
    if (!fact || !poles || !sensitivity || !feedsBack(study) || open.has(poles.value)) return;
    const later = laterRule(study);
    const serves = study.facts.one("serves");
    report(valueSpot(fact, poles), {
      message: `A ${poles.value} RCBO leaves the neutral of the source connected: fit a ${study.threePhase ? "four-pole" : "double-pole"} one.${later.words}`,
      source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 551.7.1", standing: "memory" }),
      ...(later.severity ? { severity: later.severity } : {}),
      related: serves ? [{ spot: factSpot(serves), message: "A source on this circuit." }] : [],
    });
  },
});

const open: ReadonlySet<string> = new Set(["double-pole", "four-pole"]);
