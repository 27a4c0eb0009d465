import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/missing-for-public-lighting",
  severity: "error",
  since: "0.1",
  title: "Outdoor lighting within reach of the public is not protected by a 30 mA RCD.",
  why: "Columns and bollards are knocked, opened and climbed, and whoever leans on one stands on the ground.",
  clauses: ["714.411.3.4", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Path bollards" {
  device       BS EN 60898 C10 6 kA
  serves       lighting
  ^^^^^^^^^^^^^^^^^^^^^
  place        public
}`,
      good: `way 1 radial "Path bollards" {
  device       BS EN 61009 C10 6 kA 30 mA type A
  serves       lighting
  place        public
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "public-lighting", "Lighting within reach of the public needs");
  },
});
