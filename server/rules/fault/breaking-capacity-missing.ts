import { breakingOf, conditionalAt } from "../../circuit/breaking.ts";
import { stageOf, workOf } from "../../circuit/supply.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "fault/breaking-capacity-missing",
  severity: "warning",
  since: "0.1",
  title: "The breaking capacity of a breaker is not stated.",
  why: "Without it the device cannot be compared with the fault current. It is printed on the front, in a box.",
  clauses: ["434.5.1"],
  examples: [
    {
      setting: { stage: "installed" },
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 B16
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
}`,
    },
  ],
  check(study, report) {
    const { device, context } = study;
    if (!device || study.isSpare || device.family !== "breaker" || breakingOf(study)) return;
    if (conditionalAt(context)) return;
    const early = stageOf(context) === "design" || workOf(study) === "existing";
    report(factSpot(device.fact), {
      message:
        "The breaking capacity is not stated, so it cannot be compared with the fault current: read it off the device.",
      ...(early ? { severity: "information" } : {}),
    });
  },
});
