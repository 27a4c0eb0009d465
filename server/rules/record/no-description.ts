import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/no-description",
  severity: "warning",
  since: "0.1",
  title: "A circuit without a description.",
  why: "Whoever comes to isolate it must know what it serves. The description stands on the chart at the board.",
  clauses: ["514.8.1", "514.9.1"],
  examples: [
    {
      bad: `way 1 radial {
^^^
  device  BS EN 60898 B32 6 kA
}`,
      good: `way 1 radial "Oven" {
  device  BS EN 60898 B32 6 kA
}`,
    },
  ],
  check(study, report) {
    const { way, isSpare } = study;
    if (isSpare || way.id === "" || way.title.trim() !== "") return;
    report(wordSpot(way.header), {
      message: `What does way ${way.id} serve? Write it in quotes after its number.`,
    });
  },
});
