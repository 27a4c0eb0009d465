import { exceeds, greatestBy } from "../../calc/compare.ts";
import { relation } from "../../calc/result.ts";
import { exact, quantityOf } from "../../model/values.ts";
import { latestDead } from "../../readings/dead.ts";
import { readOnLines } from "../../readings/lines.ts";
import { radialPoints } from "../../readings/radial-points.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { capital } from "../../text/words.ts";
import { shown } from "../common/dead-words.ts";
import { amount, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/highest-not-recorded",
  severity: "warning",
  since: "0.1",
  title: "R1+R2 of a circuit is lower than the reading at one of its points or lines.",
  why: "Zs is calculated from the highest reading, and the circuit is judged by it. A lower one makes the circuit look better than its worst point.",
  clauses: ["643.2.1", "411.4.4"],
  examples: [
    {
      bad: `way 1 radial "Hall lights" {
  dead 2026-03-04 {
    at S1        L-E 0.18 Ω
    at S3        L-E 0.48 Ω
    R1+R2        0.33 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Hall lights" {
  dead 2026-03-04 {
    at S1        L-E 0.18 Ω
    at S3        L-E 0.48 Ω
    R1+R2        0.48 Ω
  }
}`,
    },
    {
      bad: `way 1 radial "Saw" {
  phase        three
  dead 2026-03-04 {
    R1+R2        0.33 Ω L1 0.33 Ω L2 0.48 Ω L3 0.32 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Saw" {
  phase        three
  dead 2026-03-04 {
    R1+R2        0.48 Ω L1 0.33 Ω L2 0.48 Ω L3 0.32 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const fact = latestDead(study, "R1+R2")?.fact;
    const written = quantityOf(fact?.args.value);
    const points = [
      ...radialPoints(study),
      ...readOnLines(fact).map((line) => ({ name: line.name, fact: line.fact, "L-E": line.reading })),
    ].filter((point) => exact(point["L-E"]) !== undefined);
    const highest = greatestBy(points, (point) => point["L-E"]?.value)?.one;
    const most = highest?.["L-E"];
    if (!fact || written?.sign !== "=" || !highest || !most) return;
    const { meterUncertainty } = deadTestPractice;
    if (!exceeds(most.value - written.value, meterUncertainty.value)) return;
    report(valueSpot(fact, written), {
      message: `R1+R2 is recorded as ${shown(written)}, but ${highest.name} reads ${shown(most)}: record the highest.`,
      value: amount(written.value, "Ω"),
      limit: amount(most.value, "Ω"),
      least: true,
      steps: [relation("R1+R2 ≥ the highest point", shown(written), shown(most))],
      source: meterUncertainty.source,
      related: [{ spot: factSpot(highest.fact), message: `${capital(highest.name)} reads ${shown(most)}.` }],
    });
  },
});
