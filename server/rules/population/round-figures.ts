import { ohms } from "../../calc/result.ts";
import { type ExactReading, exactReading } from "../../circuit/supply.ts";
import { comparison } from "../../tables/comparison.ts";
import { amount, boardRule, factSpot } from "../frame/rule.ts";

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

/** Whether a figure read to hundredths stands on a step of the scale. */
function isRound({ value, decimals }: ExactReading): boolean {
  const steps = value / comparison.roundStep.value;
  return decimals >= 2 && Math.abs(steps - Math.round(steps)) < 1e-6;
}

export default boardRule({
  id: "population/round-figures",
  severity: "information",
  since: "0.1",
  title: "All readings of a board are round figures.",
  why: "One reading in five of a meter that shows hundredths ends in 0 or 5. Where every reading does, they were estimated, or written down from memory.",
  clauses: ["643.2.1", "643.7.3"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: sample([
        ["0.25", "0.60"],
        ["0.40", "0.75"],
        ["0.15", "0.50"],
        ["0.35", "0.70"],
      ]).replace("R1+R2        0.25 Ω", "R1+R2        0.25 Ω\n    ^^^^^^^^^^^^^^^^^^^"),
      good: sample([
        ["0.25", "0.58"],
        ["0.41", "0.75"],
        ["0.15", "0.47"],
        ["0.36", "0.70"],
      ]),
    },
  ],
  check({ studies }, report) {
    const readings = studies.flatMap((study) =>
      [exactReading(study.R1R2), exactReading(study.Zs)].flatMap((one) =>
        one && !study.isSpare && one.fact.provenance === "measured" ? [one] : [],
      ),
    );
    const [first, ...others] = readings;
    const distinct = new Set(readings.map(({ value }) => value)).size;
    if (!first || readings.length < comparison.roundReadings.value || distinct < comparison.equalReadings.value) return;
    if (!readings.every(isRound)) return;
    report(factSpot(first.fact), {
      message: `All ${readings.length} readings of R1+R2 and Zs on this board end in 0 or 5: were they read off the meter, or estimated?`,
      value: amount(first.value, "Ω"),
      source: comparison.roundReadings.source,
      related: others
        .slice(0, 8)
        .map(({ fact, value }) => ({ spot: factSpot(fact), message: `${ohms(value)}, another round figure.` })),
    });
  },
});
