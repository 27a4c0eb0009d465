import { workOf } from "../../circuit/supply.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/no-length",
  severity: "warning",
  since: "0.1",
  title: "The cable length of a circuit is not stated.",
  why: "Voltage drop and the expected readings follow from the length. Without it a wrong reading cannot be recognised.",
  clauses: ["525.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
^^^
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
}`,
      good: `way 1 radial "Oven" {
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  length       12 m
}`,
    },
  ],
  check(study, report) {
    const { way, facts, isSpare, isBare } = study;
    if (isSpare || isBare || facts.has("length") || facts.has("run") || workOf(study) === "existing") return;
    report(wordSpot(way.header), {
      message: `The cable length of way ${way.id} is not stated: write length, or its run from point to point.`,
    });
  },
});
