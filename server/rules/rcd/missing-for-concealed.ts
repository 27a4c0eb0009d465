import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/missing-for-concealed",
  severity: "error",
  since: "0.1",
  title: "A cable concealed less than 50 mm deep is not protected by a 30 mA RCD.",
  why: "Sooner or later someone drives a nail or a screw into it. Without the RCD the cable has to be deeper, in earthed steel, or of a type with an earthed metal covering.",
  clauses: ["522.6.202", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  route        wall  method 102  depth 20 mm
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  route        wall  method 102  depth 60 mm
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "concealed", "A cable concealed this shallow needs");
  },
});
