import { ohms } from "../../calc/result.ts";
import { type RingPoint, studyRing } from "../../readings/ring.ts";
import { type PointMismatch, pointMismatch } from "../../readings/ring-points.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { endsRelated, otherPoints, readingSpot } from "../common/dead-words.ts";
import { beyondTolerance, uncertaintySteps } from "../common/uncertainty-words.ts";
import { amount, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/point-reading",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "A point of a ring does not read what its position gives.",
  why: "With the legs cross-connected each point reads close to a quarter of the sum of the ends, and a point on a spur more by its own cable. A reading that does not fit is a joint, a spur that is not drawn, or a point of another circuit.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  run          A 15 m S1 15 m S2 15 m S3 15 m A
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.28 Ω
    at S2        L-N 0.22 Ω  L-E 0.41 Ω
                                 ^^^^^^
    at S3        L-N 0.22 Ω  L-E 0.28 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  run          A 15 m S1 15 m S2 15 m S3 15 m A
  run          S2 5 m X1
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.28 Ω
    at S2        L-N 0.22 Ω  L-E 0.29 Ω
    at S3        L-N 0.22 Ω  L-E 0.28 Ω
    at X1        L-N 0.30 Ω  L-E 0.39 Ω
  }
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  points       4
  spurs        1
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.29 Ω
    at S4        L-N 0.30 Ω  L-E 0.39 Ω
                     ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        flat-twin  line 4 mm²  cpc 1.5 mm²
  points       4
  dead 2026-03-04 {
    ends         r1 0.46 Ω  rn 0.46 Ω  r2 1.21 Ω
    at S1        L-N 0.23 Ω  L-E 0.34 Ω
    at S4        L-N 0.23 Ω  L-E 0.41 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    const ring = studyRing(study);
    for (const point of ring.points) {
      const mismatch = pointMismatch(study, point);
      if (!mismatch || mismatch.kind === "open" || mismatch.kind === "contact") continue;
      const [round] = mismatch.rounds;
      const expected = round && point.expected[round];
      const value = round && point.readings[round]?.value;
      const excess = round && mismatch.excess[round];
      if (!round || !expected || value === undefined || excess === undefined) continue;
      const bound = excess > 0 ? expected.greatest : expected.least;
      const { length } = point.place?.spur ?? {};
      const where = length === undefined ? "" : ` with its ${length} m of spur`;
      const quantity = point.readings[round]?.quantity;
      const meter = quantity && uncertaintyOnWay(study, point.fact, quantity);
      const by = Math.abs(excess) - expected.tolerance;
      report(readingSpot(point, round), {
        message: `${point.name} reads ${ohms(value)} ${round} where the ends give ${ohms(bound)}${where}. ${suspicion(mismatch, point)}${beyondTolerance(meter, by)}`,
        value: amount(value, "Ω"),
        limit: amount(bound, "Ω"),
        steps: [...expected.by.steps, ...uncertaintySteps(meter)],
        source: expected.by.source,
        related: [...endsRelated(ring), ...otherPoints(ring.points, point)],
        ...(mismatch.kind === "spur-unknown" ? { severity: "information" as const } : {}),
      });
    }
  },
});

function suspicion({ kind, rounds, spur }: PointMismatch, { place }: RingPoint): string {
  if (kind === "low") return "That is too low: was it this circuit, and were the legs cross-connected?";
  const metres = spur === undefined ? undefined : Math.max(1, Math.round(spur));
  if (kind === "spur-unknown") {
    return metres === undefined
      ? "If it is on a spur, write its run with the length."
      : `It fits a spur of about ${metres} m: if it is one, write its run.`;
  }
  if (place?.spur) return "Look for a longer spur, or a poor joint in it.";
  if (metres !== undefined)
    return place
      ? `It fits a spur of about ${metres} m, but the run has it on the ring.`
      : `It fits a spur of about ${metres} m: write its run, or look for a poor joint.`;
  if (rounds.length === 1)
    return rounds[0] === "L-E" ? "Look at the earth terminal there." : "Look at the neutral terminal there.";
  return "Look for a poor joint there, or a spur that is not recorded.";
}
