import { type Calculated, ohms } from "../../calc/result.ts";
import { mayReadLess } from "../../circuit/cpc.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { lengthMismatch } from "../../readings/dead.ts";
import { expectedCircuit } from "../../readings/expected.ts";
import { radialPoints } from "../../readings/radial-points.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { shown } from "../common/dead-words.ts";
import { offLength } from "../common/off-length.ts";
import { beyondTolerance } from "../common/uncertainty-words.ts";
import { type Reporter, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/point-against-length",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "A point of a radial does not read what the cable to it should give.",
  why: "A poor joint on a branch does not show at the far end of the circuit. Each point is compared with its own length of cable.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 radial "Hall lights" {
  cable        flat-twin  line 1.5 mm²  cpc 1.0 mm²
  run          A 6 m S1 5 m S2 5 m S3
  dead 2026-03-04 {
    at S1        L-E 0.18 Ω
    at S2        L-E 0.71 Ω
                     ^^^^^^
    at S3        L-E 0.48 Ω
  }
}`,
      good: `way 1 radial "Hall lights" {
  cable        flat-twin  line 1.5 mm²  cpc 1.0 mm²
  run          A 6 m S1 5 m S2 5 m S3
  dead 2026-03-04 {
    at S1        L-E 0.18 Ω
    at S2        L-E 0.33 Ω
    at S3        L-E 0.48 Ω
  }
}`,
    },
    {
      bad: `way 1 radial "Car park columns" {
  cable        armoured 90 °C  line 6 mm²  cpc 6 mm²  cores 3
  run          A 40 m C1 25 m C2
  dead 2026-03-04 {
    at C1        R2 0.13 Ω
    at C2        R2 0.62 Ω
                    ^^^^^^
  }
}`,
      good: `way 1 radial "Car park columns" {
  cable        armoured 90 °C  line 6 mm²  cpc 6 mm²  cores 3
  run          A 40 m C1 25 m C2
  dead 2026-03-04 {
    at C1        R2 0.13 Ω
    at C2        R2 0.20 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const points = radialPoints(study);
    const circuit = points.length > 0 ? expectedCircuit(study) : undefined;
    if (!circuit?.network.drawn) return;
    for (const point of points) {
      const sound = circuit.points.find(({ name }) => name === point.name);
      for (const kind of ["L-E", "R2"] as const) compare(study, report, point, kind, sound?.[kind]);
    }
  },
});

type Points = ReturnType<typeof radialPoints>;

const kinds = { "L-E": "to earth", R2: "for R2" } as const;

function compare(
  study: WayStudy,
  report: Reporter,
  { name, fact, ...read }: Points[number],
  kind: keyof typeof kinds,
  expected: Calculated | undefined,
): void {
  const quantity = read[kind];
  const mismatch = quantity && expected && quantity.sign !== ">" && lengthMismatch(quantity, expected.value);
  // Nothing at all, or less, is reported as that.
  if (!quantity || !expected || !mismatch || quantity.value <= 0) return;
  const isHigh = mismatch.kind === "high";
  if (!isHigh && (study.facts.has("parallel-path") || (kind === "R2" && mayReadLess(study)))) return;
  const meter = uncertaintyOnWay(study, fact, quantity);
  const cause = isHigh
    ? "Look for a poor joint, and check the lengths."
    : "Look for a parallel path, and check where it was read.";
  report(valueSpot(fact, quantity), {
    message: `${name} reads ${shown(quantity)} ${kinds[kind]}, where the cable to it gives ${ohms(expected.value)}. ${cause}${beyondTolerance(meter, mismatch.by)}`,
    ...offLength(study, quantity, expected, mismatch.kind, meter),
  });
}
