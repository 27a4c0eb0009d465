import { relatedFact } from "../common/dead-words.ts";
import { inPlaceOf } from "../common/writing.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/run-not-closed",
  severity: "error",
  since: "0.1",
  title: "A ring's run does not return to the board, or a radial's does.",
  why: "A ring begins and ends at the same device. One that does not return is a radial on too large a device; one that does and is recorded as a radial is tested as the wrong thing.",
  clauses: ["433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 9 m S3
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 9 m S3 8 m A
}`,
    },
    {
      bad: `way 1 radial "Sockets" {
  run          A 7 m S1 6 m S2 9 m A
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Sockets" {
  run          A 7 m S1 6 m S2
}`,
    },
  ],
  check(study, report) {
    const { runs, way } = study;
    const [first] = study.facts.all("run");
    if (!runs || !first || study.facts.isUnread("run")) return;
    const { kind } = way.header.args;
    if (study.isRing && !runs.closed) {
      report(factSpot(first), {
        message: `The first run of this ring does not return to ${runs.board}: add the leg back, or make the way a radial.`,
        related: [relatedFact(way.header, "Recorded as a ring.")],
        fixes: kind ? [inPlaceOf(kind, "radial", "Make it a radial")] : [],
      });
    } else if (way.kind === "radial" && runs.closed) {
      report(factSpot(first), {
        message: `This run returns to ${runs.board}, so the circuit is a ring, but it is recorded as a radial.`,
        related: kind ? [{ spot: valueSpot(way.header, kind), message: "Recorded as a radial." }] : [],
        fixes: kind ? [inPlaceOf(kind, "ring", "Make it a ring")] : [],
      });
    }
  },
});
