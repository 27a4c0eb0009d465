import { type Round, studyRing } from "../../readings/ring.ts";
import { pointUncertainty } from "../../readings/ring-points.ts";
import { endsRelated, otherPoints, readingSpot, shown } from "../common/dead-words.ts";
import { amount, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/point-open",
  severity: "error",
  since: "0.1",
  title: "One point of a ring reads open while the others do not.",
  why: "Two conductors have changed places at that point, one of them is off its terminal, or the point belongs to another circuit. Line and neutral reversed shows only in the line-earth round, line and earth reversed only in the line-neutral round: that is why both are made.",
  clauses: ["643.6", "643.2.1", "314.4"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends   r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω
    at S1  L-N 0.22 Ω  L-E 0.29 Ω
    at S2  L-N 0.22 Ω  L-E >99.9 Ω
                           ^^^^^^^
    at S3  L-N 0.22 Ω  L-E 0.29 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends   r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω
    at S1  L-N 0.22 Ω  L-E 0.29 Ω
    at S2  L-N 0.22 Ω  L-E 0.29 Ω
    at S3  L-N 0.22 Ω  L-E 0.29 Ω
  }
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends   r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω
    at S1  L-N 0.22 Ω   L-E 0.29 Ω
    at S2  L-N >99.9 Ω  L-E >99.9 Ω
               ^^^^^^^
    at S3  L-N 0.22 Ω   L-E 0.29 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends   r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω
    at S1  L-N 0.22 Ω  L-E 0.29 Ω
    at S2  L-N LIM "Behind a fitted wardrobe, agreed with the client"
    at S3  L-N 0.22 Ω  L-E 0.29 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    const ring = studyRing(study);
    for (const point of ring.points) {
      const uncertainty = pointUncertainty(study, point);
      const [round] = uncertainty?.rounds ?? [];
      if (uncertainty?.kind !== "open" || !round) continue;
      const quantity = point.readings[round]?.quantity;
      const said = point.fact.args.polarity;
      report(readingSpot(point, round), {
        message: `${point.name}: ${suspicion(uncertainty.rounds, point.readings)}`,
        ...(quantity ? { value: amount(quantity.value, "Ω") } : {}),
        related: [
          ...(said && "value" in said && said.value === "ok"
            ? [
                {
                  spot: readingSpot(point, round),
                  message: `Polarity is entered as right here, and the reading (${quantity ? shown(quantity) : "open"}) says it is not.`,
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
    return "no path in either round. Neutral and earth are reversed there, a terminal is loose, or the point belongs to another circuit.";
  const [round] = open;
  if (round === "L-E")
    return readings["L-N"]
      ? "no path from line to earth, while line to neutral reads. Line and neutral are reversed there, or the earth is off its terminal."
      : "no path from line to earth. Two conductors are reversed there, or the earth is off its terminal.";
  return readings["L-E"]
    ? "no path from line to neutral, while line to earth reads. Line and earth are reversed there, or the neutral is off its terminal."
    : "no path from line to neutral. Two conductors are reversed there, or one is off its terminal.";
}
