import { ohms } from "../../calc/result.ts";
import { ringTolerance } from "../../calc/ring.ts";
import { type RingPoint, studyRing } from "../../readings/ring.ts";
import { ringPattern } from "../../readings/ring-pattern.ts";
import { combine } from "../../tables/source.ts";
import { endsRelated, otherPoints, readingSpot } from "../common/dead-words.ts";
import { amount, amountOf, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/link-missing",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "All points of a ring read twice what they should, or open.",
  why: "A point is fed from both sides only while both links are made at the board. With one of them missing every point reads twice the quarter value, as it does with a live conductor that has come open since the ends were measured. Make both links, measure the ends again, and repeat the readings at the points.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.44 Ω  L-E 0.70 Ω
                     ^^^^^^
    at S2        L-N 0.44 Ω  L-E 0.61 Ω
    at S3        L-N 0.44 Ω  L-E 0.47 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.88 Ω  rn 0.88 Ω  r2 1.45 Ω
    at S1        L-N 0.44 Ω  L-E 0.57 Ω
    at S2        L-N 0.44 Ω  L-E 0.58 Ω
    at S3        L-N 0.44 Ω  L-E 0.57 Ω
  }
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N >99.9 Ω
                     ^^^^^^^
    at S2        L-N >99.9 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω
    at S2        L-N 0.22 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const pattern = ringPattern(study);
    const ring = studyRing(study);
    const [first] = pattern && "points" in pattern ? pattern.points : [];
    if (!pattern || !first) return;
    const related = [...endsRelated(ring), ...otherPoints(ring.points, first)];
    const round = first.readings["L-N"] ? "L-N" : "L-E";
    const quantity = first.readings[round]?.quantity;
    if (pattern.kind === "nothing-read" && quantity) {
      report(readingSpot(first, round), {
        message: "All points read open: the links at the board were not made, or they were made on another circuit.",
        value: amount(quantity.value, "Ω"),
        related,
      });
    }
    const quarter = ring.quarter["L-N"];
    if (pattern.kind !== "doubled" || !quarter || !quantity) return;
    report(readingSpot(first, "L-N"), {
      message: `Every point reads about twice the ${ohms(quarter.value)} the ends give: ${falls(ring.points) ? "one of the two links at the board was missing" : "a link was missing, or a live conductor is open"}. Repeat.`,
      value: amount(quantity.value, "Ω"),
      limit: amountOf(quarter),
      steps: quarter.steps,
      source: combine(quarter.source, ringTolerance.source),
      related,
    });
  },
});

/** With one link the line-earth readings run one way all round; with an open conductor they turn at the break. */
function falls(points: readonly RingPoint[]): boolean {
  const values = points.flatMap(({ readings, place }) => (place?.spur ? [] : (readings["L-E"]?.value ?? [])));
  const steps = values.slice(1).map((value, index) => value - (values[index] ?? value));
  if (steps.length < 2) return false;
  return steps.every((step) => step < 0) || steps.every((step) => step > 0);
}
