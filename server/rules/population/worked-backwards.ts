import { ohms, round, step } from "../../calc/result.ts";
import { exactReading } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { comparison } from "../../tables/comparison.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

/** The two readings of a circuit that were both measured, and whether they add up to the last digit. */
function sumOf(study: WayStudy) {
  const Zs = exactReading(study.Zs);
  const R1R2 = exactReading(study.R1R2);
  const board = study.boardImpedance;
  if (!Zs || !R1R2 || !board) return [];
  if (Zs.fact.provenance !== "measured" || R1R2.fact.provenance !== "measured") return [];
  const decimals = Math.max(Zs.decimals, R1R2.decimals, board.decimals);
  return [{ study, Zs, R1R2, board, exactly: round(Zs.value - board.value - R1R2.value, decimals) === 0 }];
}

const sample = (readings: readonly (readonly [string, string])[]): string =>
  readings
    .map(
      ([R, Z], index) => `way ${index + 1} radial "Bench ${index + 1}" {
  dead 2026-03-04 {
    R1+R2        ${R} Ω
  }
  live 2026-03-05 {
    Zs           ${Z} Ω
  }
}`,
    )
    .join("\n");

const exactly = ["0.22", "0.31", "0.47", "0.28", "0.35", "0.41", "0.52", "0.19", "0.66"].map(
  (R) => [R, (Number(R) + 0.3).toFixed(2)] as const,
);

export default boardRule({
  id: "population/worked-backwards",
  severity: "warning",
  since: "0.1",
  title: "The readings of a whole board add up to the last digit.",
  why: "Meters differ by a hundredth or two, and parallel paths by more. A few sums come out to the last digit by chance; where every circuit of a larger board agrees exactly, one column was calculated from the other: mark it calculated, which is allowed, or measure it.",
  clauses: ["643.2.1", "643.7.3"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: sample(exactly).replace("Zs           0.52 Ω", "Zs           0.52 Ω\n    ^^^^^^^^^^^^^^^^^^^"),
      good: sample([...exactly.slice(1), ["0.47", "0.76"]]),
    },
  ],
  check({ studies }, report) {
    const sums = studies.flatMap(sumOf);
    const [first] = sums;
    if (!first || sums.length < comparison.exactSums.value || !sums.every(({ exactly }) => exactly)) return;
    const { Zs, R1R2, board } = first;
    report(factSpot(Zs.fact), {
      message: `Zs of all ${sums.length} circuits is ${board.name} plus R1+R2 to the last digit: if it was not measured, mark it calculated.`,
      steps: [
        step(`${board.name} + (R1+R2)`, `${ohms(board.value)} + ${ohms(R1R2.value)}`, ohms(board.value + R1R2.value)),
      ],
      source: comparison.exactSums.source,
      related: sums.slice(1).map((sum) => ({
        spot: factSpot(sum.Zs.fact),
        message: `Way ${sum.study.way.id}: Zs ${ohms(sum.Zs.value)}.`,
      })),
    });
  },
});
