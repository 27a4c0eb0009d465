import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/serves-not-stated",
  severity: "information",
  since: "0.1",
  title: "It is not stated what a circuit supplies.",
  why: "The RCD it needs, its disconnection time and its voltage drop depend on whether it supplies sockets, lighting or one appliance. They are judged only where it is stated.",
  clauses: ["514.9.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
^^^
  device       BS EN 60898 B32 6 kA
}`,
      good: `way 1 radial "Oven" {
  device       BS EN 60898 B32 6 kA
  serves       cooker
}`,
    },
  ],
  check(study, report) {
    const { way, facts, isSpare, isBare } = study;
    if (isSpare || isBare || study.isFeeder || facts.has("serves")) return;
    report(wordSpot(way.header), {
      message: `It is not stated what way ${way.id} supplies, so whether it needs an RCD is not judged: write serves and the use.`,
    });
  },
});
