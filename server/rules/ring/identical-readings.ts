import { ohms, step } from "../../calc/result.ts";
import { studyRing } from "../../readings/ring.ts";
import { expectedSpread, ringPattern } from "../../readings/ring-pattern.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { endsRelated, otherPoints, readingSpot, shown } from "../common/dead-words.ts";
import { amount, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/identical-readings",
  severity: "information",
  compares: true,
  since: "0.1",
  title: "All points of a ring read the same to the last digit where they should differ.",
  why: "Round a long ring, or one whose cpc is smaller than its line, the readings to earth rise towards the middle. Equal figures to the last digit look like one reading copied down the column.",
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 4 mm²  cpc 1.5 mm²
  run          A 3 m S1 27 m S2 25 m S3 25 m S4 20 m A
  dead 2026-03-04 {
    ends         r1 0.46 Ω  rn 0.46 Ω  r2 1.21 Ω
    at S1        L-N 0.23 Ω  L-E 0.38 Ω
                                 ^^^^^^
    at S2        L-N 0.23 Ω  L-E 0.38 Ω
    at S3        L-N 0.23 Ω  L-E 0.38 Ω
    at S4        L-N 0.23 Ω  L-E 0.38 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        flat-twin  line 4 mm²  cpc 1.5 mm²
  run          A 3 m S1 27 m S2 25 m S3 25 m S4 20 m A
  dead 2026-03-04 {
    ends         r1 0.46 Ω  rn 0.46 Ω  r2 1.21 Ω
    at S1        L-N 0.23 Ω  L-E 0.34 Ω
    at S2        L-N 0.23 Ω  L-E 0.40 Ω
    at S3        L-N 0.23 Ω  L-E 0.42 Ω
    at S4        L-N 0.23 Ω  L-E 0.39 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing || ringPattern(study)) return;
    const ring = studyRing(study);
    const points = ring.points.filter(({ place }) => !place?.spur);
    const values = points.flatMap(({ readings }) => readings["L-E"]?.value ?? []);
    const [first] = points;
    const quantity = first?.readings["L-E"]?.quantity;
    const { alikePoints, alikeSpread } = deadTestPractice;
    if (!first || !quantity || values.length < alikePoints.value || values.length < points.length) return;
    if (values.some((value) => value !== values[0])) return;
    const spread = expectedSpread(study, points, "L-E");
    if (spread === undefined || spread <= alikeSpread.value) return;
    report(readingSpot(first, "L-E"), {
      message: `All ${values.length} points read exactly ${shown(quantity)} L-E, where they should differ by about ${ohms(spread)}: was each one measured?`,
      value: amount(0, "Ω"),
      limit: amount(spread, "Ω"),
      least: true,
      steps: [step("spread round the ring at these points, from the ends", "", ohms(spread))],
      source: alikeSpread.source,
      related: [...otherPoints(points, first), ...endsRelated(ring)],
    });
  },
});
