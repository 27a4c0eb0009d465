import { typeSpan } from "../../boards/board-rcds.ts";
import { rcdCovers } from "../../calc/rcd-time.ts";
import { feedsBack } from "../../circuit/circuit-kind.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import { ruleAlone } from "../../tables/source.ts";
import { inPlaceOf, lineAfter } from "../common/writing.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/inverter-direct-current",
  severity: "warning",
  since: "0.1",
  title: "The RCD of an inverter may be blinded by direct current.",
  why: "An inverter without separation can feed smooth direct current into a fault, and a type A RCD then does not see it. The RCD is type B, unless the inverter separates its two sides or its maker declares that another type will do.",
  clauses: ["712.530.3.101"],
  examples: [
    {
      bad: `way 1 radial "Roof array" {
  device       BS EN 61009 B16 6 kA 30 mA type A bidirectional
  serves       pv
  ^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Roof array" {
  device       BS EN 61009 B16 6 kA 30 mA type A bidirectional
  serves       pv
  inverter     separated
}`,
    },
  ],
  check(study, report) {
    const serves = study.facts.one("serves");
    const inverter = study.facts.one("inverter");
    const [rcd] = study.rcds;
    if (!serves || !rcd?.type || !feedsBack(study) || study.facts.broken.includes("inverter")) return;
    if (study.context.edition === undefined || study.context.edition.id.startsWith("BS 7671:200")) return;
    const allowed = inverter?.args.allows?.value;
    const held = inverter?.args.separation.value === "separated" || (allowed && rcdCovers(rcd.type, allowed));
    if (held || rcd.type === "B") return;
    const later = laterRule(study);
    const span = typeSpan(rcd);
    report(factSpot(inverter ?? serves), {
      message: inverter
        ? `An inverter without separation needs a type B RCD, and this one is type ${rcd.type}: fit type B, or state the type its maker allows.${later.words}`
        : `Behind a type ${rcd.type} RCD an inverter must separate its two sides, or its maker allow that type: write inverter with which, or fit type B.${later.words}`,
      source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 712.530.3.101", standing: "memory" }),
      ...(later.severity ? { severity: later.severity } : {}),
      related: [{ spot: factSpot(rcd.fact), message: `RCD of the source: ${rcdName(rcd)}.` }],
      fixes: inverter
        ? span && rcd.fact.segment === inverter.segment
          ? [inPlaceOf(span, "B", "Make it type B")]
          : []
        : [lineAfter(serves, "inverter separated", "It separates its two sides: write inverter separated")],
    });
  },
});
