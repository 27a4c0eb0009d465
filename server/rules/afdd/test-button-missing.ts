import { gradeOfMissing } from "../../circuit/describe.ts";
import { liveTestsDue } from "../../circuit/supply.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "afdd/test-button-missing",
  severity: "error",
  since: "0.1",
  title: "The test button of an AFDD is not recorded.",
  why: "No instrument tests an arc fault detection device: its own button, where it has one, is the only proof that it opens.",
  clauses: ["643.10", "421.1.7"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bedroom sockets" {
  afdd         BS EN 62606
  ^^^^
  live 2026-03-05 {
    Zs           0.62 Ω
  }
}`,
      good: `way 1 radial "Bedroom sockets" {
  afdd         BS EN 62606
  live 2026-03-05 {
    Zs           0.62 Ω
    afdd-button  ok
  }
}`,
    },
  ],
  check(study, report) {
    const { facts, liveTests } = study;
    const afdd = facts.one("afdd");
    if (!afdd || !liveTestsDue(study) || liveTests.length === 0) return;
    if (liveTests.some((test) => test.facts.has("afdd-button"))) return;
    report(wordSpot(afdd), {
      ...gradeOfMissing(study),
      message: "Was the AFDD's test button pressed? Write afdd-button and what happened, or N/A if it tests itself.",
    });
  },
});
