import { ohms } from "../../calc/result.ts";
import { bandSource, bandSteps, lengthMismatch } from "../../readings/dead.ts";
import { expectedCircuit } from "../../readings/expected.ts";
import { radialPoints } from "../../readings/radial-points.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { lengthRelated, shown } from "../common/dead-words.ts";
import { beyondTolerance, uncertaintySteps } from "../common/uncertainty-words.ts";
import { amount, amountOf, valueSpot, wayRule } from "../frame/rule.ts";

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
  ],
  check(study, report) {
    const points = radialPoints(study);
    const circuit = points.length > 0 ? expectedCircuit(study) : undefined;
    if (!circuit?.network.drawn) return;
    for (const { name, fact, "L-E": quantity } of points) {
      const expected = circuit.points.find((point) => point.name === name)?.["L-E"];
      const mismatch = quantity && expected && quantity.sign !== ">" && lengthMismatch(quantity, expected.value);
      if (!quantity || !expected || !mismatch || (mismatch.kind === "low" && study.facts.has("parallel-path")))
        continue;
      const meter = uncertaintyOnWay(study, fact, quantity);
      const cause =
        mismatch.kind === "high"
          ? "Look for a poor joint, and check the lengths."
          : "Look for a parallel path, and check where it was read.";
      report(valueSpot(fact, quantity), {
        message: `${name} reads ${shown(quantity)} to earth, where the cable to it gives ${ohms(expected.value)}. ${cause}${beyondTolerance(meter, mismatch.by)}`,
        value: amount(quantity.value, "Ω"),
        limit: amountOf(expected),
        least: mismatch.kind === "low",
        steps: [...bandSteps(expected), ...uncertaintySteps(meter)],
        source: bandSource(expected),
        related: lengthRelated(study),
      });
    }
  },
});
