import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/missing-for-floor-heating",
  severity: "error",
  since: "0.1",
  title: "Floor heating is not protected by a 30 mA RCD.",
  why: "The elements lie under the feet of people, and a screw or a chair leg reaches them. The RCD is required whatever the room.",
  clauses: ["753.411.3.2", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Hall floor" {
  device       BS EN 60898 B16 6 kA
  serves       floor-heating
  ^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Hall floor" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  serves       floor-heating
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "floor-heating", "Floor heating needs");
  },
});
