import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/show-without-rcd",
  severity: "error",
  since: "0.1",
  title: "A circuit of a stand, ride or stall is not protected by a 30 mA RCD.",
  why: "Stands and rides are put up in a hurry, moved and walked over by the public. Their final circuits have RCDs, besides the delayed one at the origin.",
  clauses: ["711.411.3.3", "740.415.1", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Stall lights" {
  device       BS EN 60898 B6 6 kA
  serves       lighting
  place        fairground
  ^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Stall lights" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       lighting
  place        fairground
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "exhibition", "Final circuits of a stand need");
    reportMissing(study, report, "fairground", "Final circuits of a fairground need");
  },
});
