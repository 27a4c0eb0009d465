import { ohms, percent } from "../../calc/result.ts";
import { exactReading } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { comparison } from "../../tables/comparison.ts";
import { amount, amountOf, boardRule, factSpot } from "../frame/rule.ts";

/** A loop reading and the limit a cold reading is compared with. */
function resultOf(study: WayStudy) {
  const Zs = exactReading(study.Zs);
  const { disconnection } = study;
  if (!Zs || disconnection?.by !== "overcurrent" || !disconnection.cold) return [];
  return [{ study, Zs, limit: disconnection.cold }];
}

const sample = (readings: readonly string[]): string =>
  readings
    .map(
      (Z, index) => `way ${index + 1} radial "Kiln ${index + 1}" {
  device       BS EN 60898 B32 6 kA
  live 2026-03-05 {
    Zs           ${Z} Ω
  }
}`,
    )
    .join("\n");

export default boardRule({
  id: "population/all-near-limit",
  severity: "information",
  since: "0.1",
  title: "Zs of every circuit of a board is just within its limit.",
  why: "One circuit at its limit is a long cable. All of them are a design without any margin, or readings adjusted to pass: nothing is left for a joint that ages.",
  clauses: ["411.4.4"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: sample(["1.06", "1.07", "1.05"]).replace(
        "Zs           1.06 Ω",
        "Zs           1.06 Ω\n    ^^^^^^^^^^^^^^^^^^^",
      ),
      good: sample(["1.06", "0.72", "0.85"]),
    },
  ],
  check({ studies }, report) {
    const results = studies.flatMap(resultOf);
    const [first] = results;
    if (!first || results.length < comparison.nearLimitCircuits.value) return;
    const near = results.every(
      ({ Zs, limit }) => Zs.value <= limit.value && Zs.value >= limit.value * comparison.nearLimitShare.value,
    );
    if (!near) return;
    const left = percent((1 - comparison.nearLimitShare.value) * 100);
    report(factSpot(first.Zs.fact), {
      message: `All ${results.length} circuits of this board are within ${left} of their limit for Zs: was each one measured?`,
      value: amount(first.Zs.value, "Ω"),
      limit: amountOf(first.limit),
      steps: first.limit.steps,
      source: comparison.nearLimitCircuits.source,
      related: results.slice(1).map(({ study, Zs, limit }) => ({
        spot: factSpot(Zs.fact),
        message: `Way ${study.way.id}: Zs ${ohms(Zs.value)}, limit ${ohms(limit.value)}.`,
      })),
    });
  },
});
