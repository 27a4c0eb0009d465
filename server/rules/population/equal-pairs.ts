import { megohms } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fact } from "../../model/values.ts";
import { insulationOf } from "../../readings/insulation.ts";
import { comparison } from "../../tables/comparison.ts";
import { listedUpTo } from "../../text/words.ts";
import { amount, boardRule, factSpot } from "../frame/rule.ts";

const sample = (readings: readonly (readonly [string, string, string])[]): string =>
  readings
    .map(
      ([LN, LE, NE], index) => `way ${index + 1} radial "Bench ${index + 1}" {
  dead 2026-03-04 {
    insulation   500 V  L-N ${LN} MΩ  L-E ${LE} MΩ  N-E ${NE} MΩ
  }
}`,
    )
    .join("\n");

/** A circuit whose three insulation readings are one and the same figure. Off scale any number of them may be. */
function alike(study: WayStudy): { study: WayStudy; fact: Fact; value: number }[] {
  const values = study.isSpare ? [] : (insulationOf(study)?.values ?? []);
  const [first, ...others] = values;
  const same = values.every(({ quantity }) => quantity.sign === "=" && quantity.value === first?.quantity.value);
  return first && same && others.length >= 2 ? [{ study, fact: first.fact, value: first.quantity.value }] : [];
}

export default boardRule({
  id: "population/equal-pairs",
  severity: "warning",
  since: "0.1",
  title: "Circuits read the same insulation resistance between every pair of conductors.",
  why: "Each pair of conductors has its own capacitance and leakage, and no meter shows one figure for all of them circuit after circuit. One reading was entered three times: which pair was tested?",
  clauses: ["643.3.1"],
  examples: [
    {
      setting: { stage: "dead-tested" },
      bad: sample([
        ["310", "310", "310"],
        ["420", "420", "420"],
        ["285", "285", "285"],
        ["390", "390", "390"],
      ]).replace("N-E 310 MΩ", "N-E 310 MΩ\n    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^"),
      good: sample([
        ["310", "402", "398"],
        ["420", "420", "433"],
        ["285", "310", "305"],
        ["390", "512", "466"],
      ]),
    },
  ],
  check({ studies }, report) {
    const found = studies.flatMap(alike);
    const [first, ...others] = found;
    if (!first || found.length < comparison.equalReadings.value) return;
    report(factSpot(first.fact), {
      message: `Ways ${listedUpTo(
        8,
        found.map(({ study }) => study.way.id),
      )} read the same insulation between all three pairs: was each pair tested?`,
      value: amount(first.value, "Ω"),
      source: comparison.equalReadings.source,
      related: others.map(({ study, fact, value }) => ({
        spot: factSpot(fact),
        message: `Way ${study.way.id}: ${megohms(value)} three times.`,
      })),
    });
  },
});
