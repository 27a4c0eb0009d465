import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/no-description",
  severity: "warning",
  since: "0.1",
  title: "A circuit has no description.",
  why: "Whoever comes to isolate it must know what it supplies. The description is also what goes on the chart at the board.",
  clauses: ["514.8.1", "514.9.1"],
  examples: [
    {
      bad: `way 1 radial {
^^^
  device       BS EN 60898 B32 6 kA
}`,
      good: `way 1 radial "Oven" {
  device       BS EN 60898 B32 6 kA
}`,
    },
  ],
  check(study, report) {
    const { way, isSpare } = study;
    if (isSpare || way.id === "" || way.title.trim() !== "" || way.header.misread) return;
    report(wordSpot(way.header), {
      message: `Way ${way.id} has no description: write what it supplies, in quotes after its number.`,
    });
  },
});
