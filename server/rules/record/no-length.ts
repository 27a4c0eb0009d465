import { workOf } from "../../circuit/supply.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/no-length",
  severity: "warning",
  since: "0.1",
  title: "A circuit without the length of its cable.",
  why: "Voltage drop and the readings to expect follow from the length. Without it a reading cannot be told from a wrong one.",
  clauses: ["525.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
^^^
  cable  flat-twin line 6 mm² cpc 2.5 mm²
}`,
      good: `way 1 radial "Oven" {
  cable   flat-twin line 6 mm² cpc 2.5 mm²
  length  12 m
}`,
    },
  ],
  check(study, report) {
    const { way, facts, isSpare, isBare } = study;
    if (isSpare || isBare || facts.has("length") || facts.has("run") || workOf(study.context) === "existing") return;
    report(wordSpot(way.header), {
      message: `How long is the cable of way ${way.id}? Write its length, or its run from point to point.`,
    });
  },
});
