import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/pool-without-rcd",
  severity: "error",
  since: "0.1",
  title: "A circuit at a swimming pool is not protected by a 30 mA RCD.",
  why: "Wet skin and bare feet leave nothing to limit the current through a person. Every circuit that is not extra-low voltage is protected by a 30 mA RCD.",
  clauses: ["702.410.3.4", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Changing room heaters" {
  device       BS EN 60898 B16 6 kA
  serves       heating
  place        pool
  ^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Changing room heaters" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  serves       heating
  place        pool
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "pool", "Circuits at a swimming pool need");
  },
});
