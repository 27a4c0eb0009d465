import { hasNoLoop } from "../../circuit/circuit-kind.ts";
import { gradeOfMissing } from "../../circuit/describe.ts";
import { ownRcds } from "../../circuit/rcds.ts";
import { liveTestsDue } from "../../circuit/supply.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "live/not-tested",
  severity: "error",
  since: "0.1",
  title: "A circuit has no live tests, although the stage is “tested”.",
  why: "In the schedule an untested circuit looks like one that passed. Record the live tests, or each as LIM with the reason and who agreed.",
  clauses: ["643.1", "643.7"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
^^^
  device       BS EN 60898 B16 6 kA
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  live 2026-03-05 {
    Zs           0.62 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { way, facts, isSpare, isBare, liveTests } = study;
    if (isSpare || isBare || !liveTestsDue(study) || liveTests.length > 0 || facts.has("live")) return;
    if (hasNoLoop(study) && ownRcds(study).length === 0 && !facts.has("afdd")) return;
    report(wordSpot(way.header), {
      ...gradeOfMissing(study),
      message: `Way ${way.id} has no live tests, although the stage is “tested”: record them, or LIM with the reason.`,
    });
  },
});
