import { exceeds } from "../../calc/compare.ts";
import { ohms, plain, remark, step } from "../../calc/result.ts";
import { hasMetalBeside } from "../../circuit/cpc.ts";
import { r2OffLength, r2Share } from "../../readings/r2.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { combine } from "../../tables/source.ts";
import { cableWords, relatedFact } from "../common/dead-words.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/r2-ratio",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "R2 and R1+R2 are not in the ratio of the conductor sizes.",
  why: "R1+R2 less R2 is the line conductor. The two should be in the ratio of their tabulated resistances: a reduced protective conductor reads more than the line, never less.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  dead 2026-03-04 {
    R1+R2        0.52 Ω
    R2           0.15 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Oven" {
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  dead 2026-03-04 {
    R1+R2        0.52 Ω
    R2           0.37 Ω
  }
}`,
    },
    {
      bad: `way 1 radial "Oven" {
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  dead 2026-03-04 {
    R1+R2        0.32 Ω
    R2           0.47 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Oven" {
  cable        flat-twin  line 6 mm²  cpc 6 mm²
  dead 2026-03-04 {
    R1+R2        0.32 Ω
    R2           0.16 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const found = r2Share(study);
    if (!found) return;
    const { both, own, R1R2, R2, ratio, expected, room, swapped } = found;
    const { cable } = study;
    const { meterUncertainty, radialRatio } = deadTestPractice;
    const related = [
      relatedFact(both, `R1+R2 ${ohms(R1R2)}, of which R2 is a part.`),
      ...(cable ? [relatedFact(cable.fact, `The cable: ${cableWords(cable)}.`)] : []),
    ];
    if (exceeds(R2.value, R1R2 + meterUncertainty.value)) {
      report(valueSpot(own, R2), {
        message: `R2 ${ohms(R2.value)} is more than R1+R2 ${ohms(R1R2)}, of which it is a part: one of the two is wrong.`,
        value: amount(R2.value, "Ω"),
        limit: amount(R1R2, "Ω"),
        steps: [remark(`R2 < R1+R2 does not hold: ${ohms(R2.value)} against ${ohms(R1R2)}`)],
        source: meterUncertainty.source,
        related,
      });
      return;
    }
    if (!ratio || expected === undefined || !cable || hasMetalBeside(study)) return;
    if (Math.abs(R2.value - expected) <= room) return;
    // Length and size tell more about R2 alone, unless the two are only interchanged.
    if (!swapped && r2OffLength(study)) return;
    const share = ratio.value / (1 + ratio.value);
    report(valueSpot(own, R2), {
      message: `R2 is ${ohms(R2.value)} of R1+R2 ${ohms(R1R2)}; ${cableWords(cable)} gives ${ohms(expected)}. ${swapped ? "Line and cpc seem interchanged." : R2.value < expected ? "Look for a parallel path, or another size than recorded." : "Look for a poor joint in the cpc, or another size than recorded."}`,
      value: amount(R2.value, "Ω"),
      limit: amount(expected, "Ω"),
      least: R2.value < expected,
      steps: [
        ...ratio.steps,
        step("R2 = (R1+R2) × ratio / (1 + ratio)", `${ohms(R1R2)} × ${plain(share, 3)}`, ohms(expected)),
      ],
      source: combine(ratio.source, radialRatio.source),
      related,
    });
  },
});
