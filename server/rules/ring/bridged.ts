import { ohms } from "../../calc/result.ts";
import { studyRing } from "../../readings/ring.ts";
import { ringPattern } from "../../readings/ring-pattern.ts";
import { endsRelated, lengthRelated, listed, otherPoints, readingSpot } from "../common/dead-words.ts";
import { amount, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/bridged",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "A ring appears to be bridged part-way round.",
  why: "The ends read too little for the length, and the points inside the bridge read above the quarter value while the others agree with it. A break inside such a figure of eight stays hidden: the ends look continuous. Isolate, find the cable that joins two points and take it out, then test again.",
  opens: true,
  clauses: ["643.2.1", "433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       60 m
  dead 2026-03-04 {
    ends         r1 0.25 Ω  rn 0.25 Ω  r2 0.41 Ω
    at S1        L-N 0.13 Ω  L-E 0.16 Ω
    at S2        L-N 0.13 Ω  L-E 0.17 Ω
    at S3        L-N 0.21 Ω  L-E 0.28 Ω
                     ^^^^^^
    at S4        L-N 0.21 Ω  L-E 0.28 Ω
    at S5        L-N 0.13 Ω  L-E 0.17 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       34 m
  dead 2026-03-04 {
    ends         r1 0.25 Ω  rn 0.25 Ω  r2 0.41 Ω
    at S1        L-N 0.13 Ω  L-E 0.16 Ω
    at S2        L-N 0.13 Ω  L-E 0.17 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const pattern = ringPattern(study);
    const ring = studyRing(study);
    if (pattern?.kind !== "bridged") return;
    const [first] = pattern.points;
    const expected = first?.expected["L-N"];
    const value = first?.readings["L-N"]?.value;
    if (!first || !expected || value === undefined) return;
    report(readingSpot(first, "L-N"), {
      message: `${listed(pattern.points.map(({ name }) => name))} read above the ${ohms(expected.greatest)} the ends give, and the ends read low: look for a cable that bridges the ring.`,
      value: amount(value, "Ω"),
      limit: amount(expected.greatest, "Ω"),
      steps: expected.by.steps,
      source: expected.by.source,
      related: [...endsRelated(ring), ...lengthRelated(study), ...otherPoints(pattern.points, first)],
    });
  },
});
