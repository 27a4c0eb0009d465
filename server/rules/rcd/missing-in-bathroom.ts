import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/missing-in-bathroom",
  severity: "error",
  since: "0.1",
  title: "A circuit of a bathroom is not protected by a 30 mA RCD.",
  why: "Wet skin conducts: in a room with a bath or shower every circuit is protected by an RCD.",
  clauses: ["701.411.3.3", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Shower" {
  device       BS EN 60898 B40 6 kA
  serves       shower
  place        bathroom
  ^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Shower" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  serves       shower
  place        bathroom
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "bathroom", "Circuits of a room with a bath or shower need");
  },
});
