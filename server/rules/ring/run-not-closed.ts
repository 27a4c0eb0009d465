import { relatedFact } from "../common/dead-words.ts";
import { inPlaceOf } from "../common/writing.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/run-not-closed",
  severity: "error",
  since: "0.1",
  title:
    "The run and the kind of circuit contradict each other: a ring that does not come back, or a radial that does.",
  why: "A ring begins and ends at the same device. One that does not come back is a radial on too large a device; one that does and is called a radial is tested as the wrong thing.",
  clauses: ["433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  run  A 7 m S1 6 m S2 9 m S3
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  run  A 7 m S1 6 m S2 9 m S3 8 m A
}`,
    },
    {
      bad: `way 1 radial "Sockets" {
  run  A 7 m S1 6 m S2 9 m A
  ^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Sockets" {
  run  A 7 m S1 6 m S2
}`,
    },
  ],
  check(study, report) {
    const { runs, way } = study;
    const [first] = study.facts.all("run");
    if (!runs || !first || study.facts.broken.includes("run")) return;
    const { kind } = way.header.args;
    if (study.isRing && !runs.closed) {
      report(factSpot(first), {
        message: `This run leaves ${runs.board} and does not come back: a ring's first run ends where it began. Add the leg back to ${runs.board}, or call the way a radial.`,
        related: [relatedFact(way.header, "Called a ring here.")],
        fixes: kind ? [inPlaceOf(kind, "radial", "Call it a radial")] : [],
      });
    } else if (way.kind === "radial" && runs.closed) {
      report(factSpot(first), {
        message: `This run comes back to ${runs.board}: that is a ring, and the way is called a radial.`,
        related: kind ? [{ spot: valueSpot(way.header, kind), message: "Called a radial here." }] : [],
        fixes: kind ? [inPlaceOf(kind, "ring", "Call it a ring")] : [],
      });
    }
  },
});
