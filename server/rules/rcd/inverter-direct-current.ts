import { typeSpan } from "../../boards/board-rcds.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import { ruleAlone } from "../../tables/source.ts";
import { blindedByInverter } from "../common/inverter.ts";
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
    const blinded = blindedByInverter(study);
    if (!blinded) return;
    const { rcd, type, serves, inverter } = blinded;
    const later = laterRule(study);
    const span = typeSpan(rcd);
    report(factSpot(inverter ?? serves), {
      message: inverter
        ? `An inverter without separation needs a type B RCD, and this one is type ${type}: fit type B, or state the type its maker allows.${later.words}`
        : type === "AC"
          ? `An inverter needs a type B RCD, and this one is type AC: fit type B, or type A where the inverter separates its two sides or its maker allows it (inverter).${later.words}`
          : `Behind a type ${type} RCD an inverter must separate its two sides, or its maker allow that type: write inverter with which, or fit type B.${later.words}`,
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
