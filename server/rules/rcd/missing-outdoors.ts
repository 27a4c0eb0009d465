import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/missing-outdoors",
  severity: "error",
  since: "0.1",
  title: "Sockets used outdoors are not protected by a 30 mA RCD.",
  why: "Outdoors a person stands on the ground, often with wet hands. Without an RCD the first damaged flex can kill.",
  clauses: ["411.3.3", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Yard socket" {
  device       BS EN 60898 B16 6 kA
  serves       outdoor-sockets
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Yard socket" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  serves       outdoor-sockets
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "outdoors", "Equipment used outdoors needs");
  },
});
