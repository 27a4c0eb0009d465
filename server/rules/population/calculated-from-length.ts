import { ohms, round } from "../../calc/result.ts";
import { againstLength } from "../../readings/population.ts";
import { comparison } from "../../tables/comparison.ts";
import { amount, boardRule, factSpot } from "../frame/rule.ts";

const sample = (readings: readonly string[]): string =>
  readings
    .map(
      (R, index) => `way ${index + 1} radial "Bench ${index + 1}" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       ${14 + index * 5} m
  dead 2026-03-04 {
    R1+R2        ${R} Ω
  }
}`,
    )
    .join("\n");

export default boardRule({
  id: "population/calculated-from-length",
  severity: "information",
  since: "0.1",
  title: "R1+R2 of every circuit is what its length gives, to the last digit.",
  why: "Lengths are estimated, cables are not at 20 °C and meters differ by a digit or two. Where every circuit agrees exactly, the column was calculated: mark it calculated, which is allowed in a design, or measure it.",
  clauses: ["643.2.1"],
  examples: [
    {
      setting: { stage: "dead-tested" },
      bad: sample(["0.27", "0.37", "0.47", "0.57", "0.66"]).replace(
        "R1+R2        0.27 Ω",
        "R1+R2        0.27 Ω\n    ^^^^^^^^^^^^^^^^^^^",
      ),
      good: sample(["0.26", "0.39", "0.47", "0.61", "0.66"]),
    },
  ],
  check(subject, report) {
    // Of a few hundredths any two figures agree.
    const all = againstLength(subject).filter(({ expected }) => expected.value >= comparison.differingReading.value);
    const exactly = all.every(({ read, expected }) => round(expected.value, read.decimals) === read.value);
    const lengths = new Set(all.map(({ length }) => length));
    const [first, ...others] = all;
    if (!first || !exactly || lengths.size < comparison.spreadCircuits.value) return;
    report(factSpot(first.read.fact), {
      message: `R1+R2 of all ${all.length} circuits is what their lengths give, to the last digit: measure them, or mark them calculated.`,
      value: amount(first.read.value, "Ω"),
      steps: first.expected.steps,
      source: comparison.spreadCircuits.source,
      related: others.map(({ way, read }) => ({
        spot: factSpot(read.fact),
        message: `Way ${way.id}: R1+R2 ${ohms(read.value)}.`,
      })),
    });
  },
});
