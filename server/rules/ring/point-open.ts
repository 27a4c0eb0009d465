import { type Round, studyRing } from "../../readings/ring.ts";
import { pointMismatch } from "../../readings/ring-points.ts";
import { endsRelated, otherPoints, readingSpot, shown } from "../common/dead-words.ts";
import { amount, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/point-open",
  severity: "error",
  compares: true,
  since: "0.1",
  title: "One point of a ring reads open while the others do not.",
  why: "Two conductors are reversed at that point, one of them is off its terminal, or the point belongs to another circuit. Line and neutral reversed shows only in the line-earth readings, line and earth reversed only in the line-neutral readings: that is why both are taken.",
  opens: true,
  clauses: ["643.6", "643.2.1", "314.4"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.29 Ω
    at S2        L-N 0.22 Ω  L-E >99.9 Ω
                                 ^^^^^^^
    at S3        L-N 0.22 Ω  L-E 0.29 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.29 Ω
    at S2        L-N 0.22 Ω  L-E 0.29 Ω
    at S3        L-N 0.22 Ω  L-E 0.29 Ω
  }
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.29 Ω
    at S2        L-N >99.9 Ω  L-E >99.9 Ω
                     ^^^^^^^
    at S3        L-N 0.22 Ω  L-E 0.29 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.29 Ω
    at S2        L-N LIM "Behind a fitted wardrobe, agreed with the client"
    at S3        L-N 0.22 Ω  L-E 0.29 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    const ring = studyRing(study);
    for (const point of ring.points) {
      const mismatch = pointMismatch(study, point);
      const [round] = mismatch?.rounds ?? [];
      if (mismatch?.kind !== "open" || !round) continue;
      const quantity = point.readings[round]?.quantity;
      const said = point.fact.args.polarity;
      report(readingSpot(point, round), {
        message: `${point.name}: ${suspicion(mismatch.rounds, point.readings)}`,
        ...(quantity ? { value: amount(quantity.value, "Ω") } : {}),
        related: [
          ...(said && "value" in said && said.value === "ok"
            ? [
                {
                  spot: readingSpot(point, round),
                  message: `Polarity is recorded as correct at ${point.name}, although it reads ${quantity ? shown(quantity) : "open"}.`,
                },
              ]
            : []),
          ...otherPoints(ring.points, point),
          ...endsRelated(ring),
        ],
      });
    }
  },
});

function suspicion(open: readonly Round[], readings: { readonly [R in Round]?: unknown }): string {
  if (open.length === 2)
    return "open in both rounds: neutral and earth reversed, a loose terminal, or a point of another circuit.";
  const [round] = open;
  if (round === "L-E")
    return readings["L-N"]
      ? "open line to earth, not line to neutral: line and neutral reversed there, or the earth off its terminal."
      : "open line to earth: two conductors reversed there, or the earth off its terminal.";
  return readings["L-E"]
    ? "open line to neutral, not line to earth: line and earth reversed there, or the neutral off its terminal."
    : "open line to neutral: two conductors reversed there, or one off its terminal.";
}
