import { wayKinds } from "../../../grammar/choices.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/no-kind",
  severity: "warning",
  since: "0.1",
  title: "A circuit that is not said to be a ring, a radial or a feeder.",
  why: "A ring is tested and judged differently from a radial. What is not said to be a ring is never asked for its ring tests.",
  clauses: ["514.9.1"],
  examples: [
    {
      bad: `way 1 "Hall sockets" {
^^^
  device  BS EN 60898 B32 6 kA
}`,
      good: `way 1 ring "Hall sockets" {
  device  BS EN 60898 B32 6 kA
}`,
    },
  ],
  check(study, report) {
    const { way, facts } = study;
    if (way.kind !== undefined || way.id === "" || facts.has("feeds")) return;
    report(wordSpot(way.header), {
      message: `Is way ${way.id} a ring, a radial, a feeder or spare?`,
      fixes: Object.keys(wayKinds).map((kind) => ({
        title: `Write ${kind}`,
        edits: [{ start: way.header.args.id.end, end: way.header.args.id.end, text: ` ${kind}` }],
        safe: false,
      })),
    });
  },
});
