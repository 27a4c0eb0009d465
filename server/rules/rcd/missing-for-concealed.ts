import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/missing-for-concealed",
  severity: "error",
  since: "0.1",
  title: "A cable concealed at less than 50 mm without a 30 mA RCD.",
  why: "Somebody will drive a nail into it. The RCD is there for that person; otherwise the cable lies deeper, in earthed steel, or in a cable with an earthed metal covering.",
  clauses: ["522.6.202", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Heater" {
  device  BS EN 60898 B16 6 kA
  cable   flat-twin line 2.5 mm² cpc 1.5 mm²
  route   wall method 102 depth 20 mm
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device  BS EN 60898 B16 6 kA
  cable   flat-twin line 2.5 mm² cpc 1.5 mm²
  route   wall method 102 depth 60 mm
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "concealed", "A cable concealed this shallow needs");
  },
});
