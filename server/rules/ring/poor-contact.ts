import { ohms } from "../../calc/result.ts";
import { studyRing } from "../../readings/ring.ts";
import { pointMismatch } from "../../readings/ring-points.ts";
import { endsRelated, otherPoints, readingSpot } from "../common/dead-words.ts";
import { amount, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/poor-contact",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "One point of a ring reads high by the same amount in both sets of readings.",
  why: "What is common to both is the line conductor at that point: a worn contact, a loose terminal, or a probe that did not make contact. A loose line terminal heats up under load. A spur would read higher to earth than to neutral wherever the cpc is smaller.",
  opens: true,
  clauses: ["643.2.1", "526.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.29 Ω
    at S2        L-N 0.52 Ω  L-E 0.59 Ω
                     ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.29 Ω
    at S2        L-N 0.25 Ω  L-E 0.31 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    const ring = studyRing(study);
    for (const point of ring.points) {
      const mismatch = pointMismatch(study, point);
      const expected = point.expected["L-N"];
      const value = point.readings["L-N"]?.value;
      const by = mismatch?.excess["L-N"];
      if (mismatch?.kind !== "contact" || !expected || value === undefined || by === undefined) continue;
      const spur =
        point.place || mismatch.spur === undefined ? "" : ` (Or a spur of about ${Math.round(mismatch.spur)} m.)`;
      report(readingSpot(point, "L-N"), {
        message: `${point.name} reads ${ohms(by)} too much in both rounds: look at the line terminal there, and repeat with firm contact.${spur}`,
        value: amount(value, "Ω"),
        limit: amount(expected.greatest, "Ω"),
        steps: expected.by.steps,
        source: expected.by.source,
        related: [...endsRelated(ring), ...otherPoints(ring.points, point)],
      });
    }
  },
});
