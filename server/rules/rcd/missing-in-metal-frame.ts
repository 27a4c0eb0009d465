import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/missing-in-metal-frame",
  severity: "error",
  since: "0.1",
  title: "A cable in a metal-framed wall is not protected by a 30 mA RCD.",
  why: "The edge of a stud wears through a sheath, and the whole wall is then live at any depth. Without the RCD the cable has to be in earthed steel, or of a type with an earthed metal covering.",
  clauses: ["522.6.203", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Office heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  route        wall  method 102  depth 70 mm metal-frame
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Office heater" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  route        wall  method 102  depth 70 mm metal-frame
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "metal-frame", "A cable in a wall with metal parts needs");
  },
});
