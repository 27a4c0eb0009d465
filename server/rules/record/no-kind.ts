import { wayKinds } from "../../../grammar/choices.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/no-kind",
  severity: "warning",
  since: "0.1",
  title: "It is not stated whether a circuit is a ring, a radial or a distribution circuit.",
  why: "A ring is tested and judged differently from a radial. A missing ring test is noticed only where the circuit is recorded as a ring.",
  clauses: ["514.9.1"],
  examples: [
    {
      bad: `way 1 "Hall sockets" {
^^^
  device       BS EN 60898 B32 6 kA
}`,
      good: `way 1 ring "Hall sockets" {
  device       BS EN 60898 B32 6 kA
}`,
    },
  ],
  check(study, report) {
    const { way, facts } = study;
    if (way.kind !== undefined || way.id === "" || facts.has("feeds") || way.header.misread) return;
    // The kind may stand in the circuit type, which is not defined.
    if (way.header.args.as && !way.type) return;
    report(wordSpot(way.header), {
      message: `The kind of way ${way.id} is not stated: write ring, radial, feeder or spare.`,
      fixes: Object.keys(wayKinds).map((kind) => ({
        title: `Write ${kind}`,
        edits: [{ start: way.header.args.id.end, end: way.header.args.id.end, text: ` ${kind}` }],
        safe: false,
      })),
    });
  },
});
