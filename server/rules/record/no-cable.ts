import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/no-cable",
  severity: "warning",
  since: "0.1",
  title: "The cable of a circuit is not described.",
  why: "Without the sizes neither the current-carrying capacity nor the expected readings can be calculated.",
  clauses: ["514.9.1", "523.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
^^^
  device       BS EN 60898 B32 6 kA
}`,
      good: `way 1 radial "Oven" {
  device       BS EN 60898 B32 6 kA
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
}`,
    },
  ],
  check(study, report) {
    const { way, facts, isSpare, isBare } = study;
    if (isSpare || isBare || facts.has("cable")) return;
    report(wordSpot(way.header), {
      message: `The cable of way ${way.id} is not described: write its type, and the size of each conductor.`,
    });
  },
});
