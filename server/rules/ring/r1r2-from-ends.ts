import { round } from "../../calc/result.ts";
import { studyRing } from "../../readings/ring.ts";
import { equalsQuarter } from "../../readings/ring-r1r2.ts";
import { endsRelated, shown } from "../common/dead-words.ts";
import { wordsAfter } from "../common/writing.ts";
import { amount, amountOf, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/r1r2-from-ends",
  severity: "information",
  since: "0.1",
  title: "R1+R2 of a ring is exactly a quarter of its ends, and no point was read.",
  why: "(r1 + r2)/4 is what to expect, not what was found. Read every point with the legs cross-connected and record the highest; or mark the figure as calculated.",
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.45 Ω  rn 0.45 Ω  r2 0.75 Ω
    R1+R2        0.30 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.45 Ω  rn 0.45 Ω  r2 0.75 Ω
    R1+R2        0.30 Ω calculated
  }
}`,
    },
  ],
  check(study, report) {
    const recorded = equalsQuarter(study);
    const ring = studyRing(study);
    const quarter = ring.quarter["L-E"];
    if (!recorded || !quarter) return;
    const { fact, quantity } = recorded;
    const same = (share: number, end: "r1" | "r2") =>
      ring.values[end]?.value === round(share * quantity.value, quantity.decimals);
    const backwards = same(1.5, "r1") && same(2.5, "r2");
    report(valueSpot(fact, quantity), {
      message: `R1+R2 ${shown(quantity)} is exactly (r1 + r2) / 4${backwards ? ", r1 and r2 exactly 1.5 and 2.5 × it" : ""}, without a point read: read them, or mark it calculated.`,
      value: amount(quantity.value, "Ω"),
      limit: amountOf(quarter),
      steps: quarter.steps,
      source: quarter.source,
      related: endsRelated(ring),
      fixes: wordsAfter(fact, "calculated", "Mark it as calculated"),
    });
  },
});
