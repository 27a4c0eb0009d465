import { ohms } from "../../calc/result.ts";
import { deadTestsDue } from "../../circuit/supply.ts";
import { hasDead } from "../../readings/dead.ts";
import { studyRing } from "../../readings/ring.ts";
import { equalsQuarter } from "../../readings/ring-r1r2.ts";
import { combine } from "../../tables/source.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/points-missing",
  severity: "information",
  since: "0.1",
  title: "The ends of a ring are measured, but none of its points.",
  why: "The ends prove that each conductor is continuous. Only the two sets of readings at the points prove that every point is on the ring, the right way round, and that the ring is not bridged.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      setting: { stage: "dead-tested" },
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    R1+R2        0.31 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.28 Ω
    at S2        L-N 0.22 Ω  L-E 0.31 Ω
    R1+R2        0.31 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing || !deadTestsDue(study) || hasDead(study, "at")) return;
    const { ends, quarter } = studyRing(study);
    const [LN, LE] = [quarter["L-N"], quarter["L-E"]];
    if (!ends || !LN || equalsQuarter(study)) return;
    const also = LE ? ` and ${ohms(LE.value)} L-E` : "";
    report(factSpot(ends), {
      message: `No point of this ring has a reading: cross-connect the legs and read each, near ${ohms(LN.value)} L-N${also}.`,
      steps: [...LN.steps, ...(LE?.steps ?? [])],
      source: LE ? combine(LN.source, LE.source) : LN.source,
    });
  },
});
