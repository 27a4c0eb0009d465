import { reportPossible } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/public-reach-not-stated",
  severity: "warning",
  since: "0.1",
  title: "Whether the public reach lights outdoors is not stated, and they have no RCD.",
  why: "Outdoor lighting within reach of the public needs an RCD of 30 mA: columns and bollards are knocked, opened and climbed. Where nobody but the people of the premises comes near, it does not.",
  clauses: ["714.411.3.4", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Car park" {
  device       BS EN 60898 C10 6 kA
  serves       lighting
  ^^^^^^^^^^^^^^^^^^^^^
  place        outdoors
}`,
      good: `way 1 radial "Car park" {
  device       BS EN 61009 C10 6 kA 30 mA type A
  serves       lighting
  place        outdoors
}`,
    },
  ],
  check(study, report) {
    const cure = "fit one, or record a departure with why they are out of reach";
    reportPossible(study, report, "public-lighting", "Lights outdoors that the public can reach need", cure);
  },
});
