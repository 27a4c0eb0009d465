import { quantityOf } from "../../model/values.ts";
import { latestDead } from "../../readings/dead.ts";
import { inPlaceOf } from "../common/writing.ts";
import { valueSpot, wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "ring/ends-on-radial",
  severity: "warning",
  since: "0.1",
  title: "End-to-end readings are recorded for a circuit that is no ring.",
  why: "r1, rn and r2 are measured from one leg of a ring to the other, and a radial has one leg. Either the circuit is a ring and is judged as something else, or the figures belong to another circuit.",
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 radial "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    ^^^^
    R1+R2        0.29 Ω
  }
}`,
      good: `way 1 radial "Sockets" {
  dead 2026-03-04 {
    R1+R2        0.29 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { way } = study;
    if (way.kind !== "radial" && way.kind !== "feeder") return;
    const ends = latestDead(study, "ends")?.fact;
    if (!ends || ![ends.args.r1, ends.args.rn, ends.args.r2].some((value) => quantityOf(value))) return;
    const { kind } = way.header.args;
    report(wordSpot(ends), {
      message: `End-to-end readings belong to a ring; this is a ${way.kind}: is it a ring, or are these of another circuit?`,
      related: kind ? [{ spot: valueSpot(way.header, kind), message: `Recorded as a ${way.kind}.` }] : [],
      fixes: kind && way.kind === "radial" ? [inPlaceOf(kind, "ring", "Make it a ring")] : [],
    });
  },
});
