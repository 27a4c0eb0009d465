import { ohms, step } from "../../calc/result.ts";
import { againstLength, median } from "../../readings/population.ts";
import { comparison } from "../../tables/comparison.ts";
import { amount, boardRule, factSpot } from "../frame/rule.ts";

const sample = (readings: readonly string[]): string =>
  readings
    .map(
      (R, index) => `way ${index + 1} radial "Bench ${index + 1}" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       ${8 + index * 6} m
  dead 2026-03-04 {
    R1+R2        ${R} Ω
  }
}`,
    )
    .join("\n");

export default boardRule({
  id: "population/leads-not-nulled",
  severity: "warning",
  since: "0.1",
  title: "All circuits read over what their lengths give by the same amount.",
  why: "Joints do not add the same to long and to short runs. What is the same everywhere comes from the test: leads that were not nulled, or a fuse in one of them. The readings are too high, and a fault of one circuit is hidden among them.",
  clauses: ["643.2.1"],
  examples: [
    {
      setting: { stage: "dead-tested" },
      bad: sample(["0.27", "0.40", "0.50", "0.62"]).replace(
        "R1+R2        0.27 Ω",
        "R1+R2        0.27 Ω\n    ^^^^^^^^^^^^^^^^^^^",
      ),
      good: sample(["0.17", "0.28", "0.41", "0.49"]),
    },
  ],
  check(subject, report) {
    const all = againstLength(subject);
    const [first, ...others] = all;
    if (!first || all.length < comparison.equalReadings.value) return;
    const over = all.map(({ read, expected }) => read.value - expected.value);
    const sizes = all.map(({ expected }) => expected.value);
    const alike = Math.max(...over) - Math.min(...over) <= comparison.leadsSpread.value;
    // Where all circuits are of one length a longer cable explains as much.
    const differ = Math.max(...sizes) - Math.min(...sizes) >= 2 * comparison.differingReading.value;
    const middle = median(over);
    if (!alike || !differ || middle < comparison.leadsLeast.value) return;
    report(factSpot(first.read.fact), {
      message: `All ${all.length} circuits, short and long, read about ${ohms(middle)} over what their lengths give: null the leads and read R1+R2 again.`,
      value: amount(middle, "Ω"),
      limit: amount(comparison.leadsLeast.value, "Ω"),
      steps: all.map(({ way, read, expected }) =>
        step(`way ${way.id}`, `${ohms(read.value)} − ${ohms(expected.value)}`, ohms(read.value - expected.value)),
      ),
      source: comparison.leadsLeast.source,
      related: others.map(({ way, read }) => ({
        spot: factSpot(read.fact),
        message: `Way ${way.id}: R1+R2 ${ohms(read.value)}.`,
      })),
    });
  },
});
