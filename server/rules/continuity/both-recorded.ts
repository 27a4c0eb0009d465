import { quantityOf } from "../../model/values.ts";
import { latestDead } from "../../readings/dead.ts";
import { relatedFact } from "../common/dead-words.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/both-recorded",
  severity: "information",
  since: "0.1",
  title: "R1+R2 and R2 are both recorded for a radial.",
  why: "One of the two is required. R1+R2 proves polarity as well and can be compared with Zs; a second figure helps only where it is recorded at which point it was measured.",
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2        0.39 Ω
    R2           0.24 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2        0.39 Ω
    R2           N/A
  }
}`,
    },
  ],
  check(study, report) {
    if (study.way.kind !== "radial") return;
    const both = latestDead(study, "R1+R2")?.fact;
    const own = latestDead(study, "R2")?.fact;
    if (!both || !own || both.segment !== own.segment) return;
    if (!quantityOf(both.args.value) || !quantityOf(own.args.value)) return;
    report(factSpot(own), {
      message: "R1+R2 and R2 are both recorded, and one is enough: record in a note what the second was measured for.",
      related: [relatedFact(both, "R1+R2 of the same circuit.")],
    });
  },
});
