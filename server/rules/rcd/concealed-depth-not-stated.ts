import { rcdLimit } from "../../calc/practice.ts";
import { milliamps } from "../../calc/result.ts";
import { additionalProtection, depthNotStated, fineRcds, rcdsKnown } from "../../circuit/additional-protection.ts";
import { extraLow } from "../../circuit/circuit-kind.ts";
import { laterRule } from "../../circuit/describe.ts";
import { quotedIn } from "../../tables/source.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/concealed-depth-not-stated",
  severity: "warning",
  since: "0.1",
  title: "A cable in a wall has no RCD, and its depth is not stated.",
  why: "Nearly every cable in a wall lies less than 50 mm deep, where a nail or a screw meets it. It then needs an RCD of 30 mA, or to be in earthed steel, or of a type with an earthed metal covering.",
  clauses: ["522.6.202", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  route        wall  method 102
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  route        wall  method 102  depth 60 mm
}`,
    },
  ],
  check(study, report) {
    if (!study.isFinal || study.isSpare || extraLow(study) || study.supply.kind === "other") return;
    // Where something else requires one, that is what is reported.
    if (fineRcds(study).length > 0 || !rcdsKnown(study) || additionalProtection(study).length > 0) return;
    const route = depthNotStated(study);
    if (!route) return;
    const later = laterRule(study);
    const [residual, least] = [rcdLimit("additional"), rcdLimit("concealed")];
    report(factSpot(route), {
      message: `A cable in a wall less than ${least.value} mm deep needs an RCD of ${milliamps(residual.value)} or less, and way ${study.way.id} has none: state its depth, or fit one.${later.words}`,
      limit: { amount: residual.value, unit: "A" },
      source: quotedIn("522.6.202"),
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});
