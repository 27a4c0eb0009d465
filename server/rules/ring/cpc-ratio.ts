import { resistancePerMetre } from "../../calc/conductor-resistance.ts";
import { ohms, plain, squareMillimetres, step } from "../../calc/result.ts";
import { sizeOfResistance } from "../../readings/dead.ts";
import { studyRing } from "../../readings/ring.ts";
import { lineNeutral, ringCpcRatio } from "../../readings/ring-ends.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { combine } from "../../tables/source.ts";
import { cableWords, relatedFact } from "../common/dead-words.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/cpc-ratio",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "r2 is not in the ratio to r1 that the conductor sizes give.",
  why: "For the same length r2 and r1 are in the ratio of the tabulated resistances of the two sizes: 1.63 for 2.5/1.5 mm². Too high means a poor joint or a smaller conductor, and the earth of every point depends on it. Too low means another size than recorded, or metal in parallel with the conductor.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.44 Ω
                                          ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.72 Ω
  }
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 1.23 Ω
                                          ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        singles  line 2.5 mm²  cpc 2.5 mm²
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.44 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    const { ends, values } = studyRing(study);
    const found = ringCpcRatio(study);
    const quantity = values.r2?.quantity;
    const { cable } = study;
    if (!ends || !found?.verdict || !quantity || !cable || cable.cpc === undefined) return;
    const { ratio, expected, r2, base, verdict } = found;
    // No ratio to a reading of zero, which has a check of its own.
    if (base === 0) return;
    const line = resistancePerMetre(cable.line, cable.material);
    const fits = line && base > 0 ? sizeOfResistance((r2 / base) * line.value) : undefined;
    report(valueSpot(ends, quantity), {
      message: `r2 is ${(r2 / base).toFixed(2)} × r1; ${cableWords(cable)} gives ${plain(ratio.value)}, about ${ohms(expected)}. ${suspicion(verdict, fits, cable, lineNeutral(study)?.uneven, r2 / expected)}`,
      value: amount(r2, "Ω"),
      limit: amount(expected, "Ω"),
      least: verdict === "low",
      steps: [...ratio.steps, step("r2 = r1 × ratio", `${ohms(base)} × ${plain(ratio.value, 3)}`, ohms(expected))],
      source: combine(ratio.source, deadTestPractice.ringRatio.source),
      related: [
        relatedFact(ends, "End-to-end readings of the ring."),
        relatedFact(cable.fact, `Cable: ${cableWords(cable)}.`),
      ],
    });
  },
});

function suspicion(
  verdict: "high" | "low",
  fits: number | undefined,
  cable: { line: number; cpc: number | undefined },
  uneven: boolean | undefined,
  against: number,
): string {
  const { slipShare } = deadTestPractice;
  if ([10, 0.1].some((power) => Math.abs(against / power - 1) <= slipShare.value)) return "Check the decimal point.";
  // r1 that agrees with rn is the line's own reading, whatever r2 says.
  const inverse = cable.cpc !== undefined && fits !== undefined && fits > cable.line;
  if (inverse)
    return uneven === false
      ? "The ratio is inverted: line and cpc sizes are swapped, or metal is in parallel with the cpc."
      : "The ratio is inverted: are r1 and r2 swapped?";
  if (verdict === "low" && fits === cable.line)
    return `It fits a ${squareMillimetres(fits)} cpc: another cable, or metal in parallel.`;
  if (fits !== undefined && fits !== cable.cpc)
    return verdict === "high"
      ? `It fits a ${squareMillimetres(fits)} cpc, or a poor joint.`
      : `It fits a ${squareMillimetres(fits)} cpc: check the size recorded.`;
  if (verdict === "low") return "Look for metal in parallel with the cpc, or another size than recorded.";
  return uneven
    ? "Look for a poor joint in the cpc as well as in the line or neutral."
    : "Look for a poor joint in the cpc.";
}
