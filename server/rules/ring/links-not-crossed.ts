import { ohms } from "../../calc/result.ts";
import { ringTolerance } from "../../calc/ring.ts";
import { studyRing } from "../../readings/ring.ts";
import { ringPattern } from "../../readings/ring-pattern.ts";
import { combine } from "../../tables/source.ts";
import { endsRelated, otherPoints, readingSpot } from "../common/dead-words.ts";
import { amount, amountOf, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/links-not-crossed",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "The readings rise towards the middle of the ring: the legs were not cross-connected.",
  why: "With line and neutral of the same leg joined at the board, every point reads by its distance and the ring is not proved. Join the line of one leg to the neutral of the other, both pairs, and repeat the readings.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.07 Ω  L-E 0.09 Ω
                     ^^^^^^
    at S2        L-N 0.17 Ω  L-E 0.22 Ω
    at S3        L-N 0.22 Ω  L-E 0.28 Ω
    at S4        L-N 0.17 Ω  L-E 0.22 Ω
    at S5        L-N 0.07 Ω  L-E 0.09 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.21 Ω  L-E 0.28 Ω
    at S2        L-N 0.22 Ω  L-E 0.29 Ω
    at S3        L-N 0.22 Ω  L-E 0.29 Ω
    at S4        L-N 0.22 Ω  L-E 0.29 Ω
    at S5        L-N 0.22 Ω  L-E 0.28 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const pattern = ringPattern(study);
    const ring = studyRing(study);
    const quarter = ring.quarter["L-N"];
    if (pattern?.kind !== "links-not-crossed" || !quarter) return;
    const [first] = pattern.points;
    const value = first?.readings["L-N"]?.value;
    if (!first || value === undefined) return;
    report(readingSpot(first, "L-N"), {
      message: `The points rise from ${ohms(value)} to the middle, where all should read ${ohms(quarter.value)}: cross-connect the legs at the board and repeat.`,
      value: amount(value, "Ω"),
      limit: amountOf(quarter),
      least: true,
      steps: quarter.steps,
      source: combine(quarter.source, ringTolerance.source),
      related: [...endsRelated(ring), ...otherPoints(pattern.points, first)],
    });
  },
});
