import { rcdLimit } from "../../calc/practice.ts";
import { reportPossible } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

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
    const least = rcdLimit("concealed");
    const what = `A cable in a wall less than ${least.value} mm deep needs`;
    reportPossible(study, report, "concealed", what, "state its depth, or fit one");
  },
});
