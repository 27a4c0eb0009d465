import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/no-cable",
  severity: "warning",
  since: "0.1",
  title: "A circuit without its cable.",
  why: "Without the sizes neither the current the cable may carry nor the readings to expect can be worked out.",
  clauses: ["514.9.1", "523.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
^^^
  device  BS EN 60898 B32 6 kA
}`,
      good: `way 1 radial "Oven" {
  device  BS EN 60898 B32 6 kA
  cable   flat-twin line 6 mm² cpc 2.5 mm²
}`,
    },
  ],
  check(study, report) {
    const { way, facts, isSpare, isBare } = study;
    if (isSpare || isBare || facts.has("cable")) return;
    report(wordSpot(way.header), {
      message: `Way ${way.id} does not say what cable it has: how it is made, and the size of each conductor.`,
    });
  },
});
