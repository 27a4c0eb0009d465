import { ohms, percent, step } from "../../calc/result.ts";
import { lengthMismatch } from "../../readings/dead.ts";
import { type AgainstLength, againstLength, median } from "../../readings/population.ts";
import { comparison } from "../../tables/comparison.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { amount, boardRule, factSpot } from "../frame/rule.ts";

const sample = (readings: readonly string[]): string =>
  readings
    .map(
      (R, index) => `way ${index + 1} radial "Bench ${index + 1}" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       ${14 + index * 4} m
  dead 2026-03-04 {
    R1+R2        ${R} Ω
  }
}`,
    )
    .join("\n");

const shareOf = ({ read, expected }: AgainstLength): number => read.value / expected.value;

/** The one circuit that leaves the others, where those keep together. */
function outlier(all: readonly AgainstLength[]): { one: AgainstLength; middle: number } | undefined {
  const middle = median(all.map(shareOf));
  const away = (one: AgainstLength) => Math.abs(shareOf(one) / middle - 1);
  const [farthest, ...others] = all.toSorted((a, b) => away(b) - away(a));
  const together = others.every((one) => away(one) <= comparison.spreadOthers.value);
  const apart = farthest && away(farthest) > comparison.spreadOutlier.value;
  return farthest && apart && together ? { one: farthest, middle } : undefined;
}

export default boardRule({
  id: "population/unlike-neighbours",
  severity: "information",
  since: "0.1",
  title: "R1+R2 of one circuit does not fit its length, where its neighbours fit theirs.",
  why: "Each reading alone may pass for a length that was guessed. Where all the others of the board agree with their lengths, the one that does not has a joint worth inspecting, or a cable that is not what is recorded.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      setting: { stage: "dead-tested" },
      bad: sample(["0.28", "0.34", "0.61", "0.52", "0.57"]).replace(
        "R1+R2        0.61 Ω",
        "R1+R2        0.61 Ω\n    ^^^^^^^^^^^^^^^^^^^",
      ),
      good: sample(["0.28", "0.34", "0.44", "0.52", "0.57"]),
    },
  ],
  check(subject, report) {
    const all = againstLength(subject);
    if (all.length < comparison.spreadCircuits.value) return;
    const found = outlier(all);
    if (!found) return;
    const { one, middle } = found;
    const { way, read, quantity, expected } = one;
    const usual = expected.value * middle;
    const small = Math.abs(read.value - usual) <= deadTestPractice.highLeast.value;
    // What does not fit its length by itself is reported by another check.
    const alone = lengthMismatch(quantity, expected.value);
    if (small || alone) return;
    report(factSpot(read.fact), {
      message: `Way ${way.id} reads ${ohms(read.value)}; by the other ${all.length - 1} circuits it should be ${ohms(usual)}: look for ${read.value > usual ? "a poor joint, or a longer cable" : "a parallel path, or a shorter cable"}.`,
      value: amount(read.value, "Ω"),
      limit: amount(usual, "Ω"),
      least: read.value < usual,
      steps: [
        ...expected.steps,
        step("as the board's others read", `${ohms(expected.value)} × ${percent(middle * 100)}`, ohms(usual)),
      ],
      source: comparison.spreadOutlier.source,
      related: all
        .filter((other) => other !== one)
        .slice(0, 8)
        .map((other) => ({
          spot: factSpot(other.read.fact),
          message: `Way ${other.way.id}: R1+R2 ${ohms(other.read.value)}, ${percent(shareOf(other) * 100)} of the expected reading.`,
        })),
    });
  },
});
