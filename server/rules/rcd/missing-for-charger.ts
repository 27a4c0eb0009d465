import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/missing-for-charger",
  severity: "error",
  since: "0.1",
  title: "A charging point is not protected by a 30 mA RCD.",
  why: "A car on wet ground is touched from outside while it charges. Each charging point is protected by an RCD that disconnects all live conductors.",
  clauses: ["722.531.3.101", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Charger" {
  device       BS EN 60898 B40 6 kA
  serves       ev-charger
  ^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Charger" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  serves       ev-charger
}`,
    },
  ],
  check(study, report) {
    // No such current is charged on without a converter of the charger's own, whose output is usually separated.
    const isRapid = (study.device?.rating ?? 0) > 63;
    const note =
      " If it charges with d.c. and its maker states that its output is separated from the supply, it is excepted: write departure 722.531.3.101 with that.";
    reportMissing(study, report, "ev", "A charging point needs", () => (isRapid ? { note } : {}));
  },
});
