import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/fire-risk-without-rcd",
  severity: "error",
  since: "0.1",
  title: "A circuit in a location with a risk of fire is not protected by an RCD.",
  why: "A fault to earth too small for a fuse can smoulder for hours beside what burns. An RCD of 300 mA or less ends it.",
  clauses: ["422.3.9"],
  examples: [
    {
      bad: `way 1 radial "Straw shed heater" {
  device       BS EN 60898 B16 6 kA
  serves       appliance
  place        fire-risk
  ^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Straw shed heater" {
  device       BS EN 61009 B16 6 kA 300 mA type A
  serves       appliance
  place        fire-risk
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "fire-risk", "Circuits in a location with a risk of fire need");
  },
});
