import type { Test } from "../../analysis/supply.ts";
import { wayRule, wordSpot } from "../rule.ts";

const deadWords = ["ends", "R1+R2", "R2", "insulation", "polarity"] as const;
const liveWords = ["Zs", "rcd", "trip-current", "test-button", "afdd-button", "polarity", "phase-sequence"] as const;

/** A later block supersedes the earlier one whole: what it leaves out no longer counts. */
function skipped(tests: readonly Test<"dead">[] | readonly Test<"live">[], words: readonly string[]): string[] {
  const [latest, before] = tests;
  if (!latest || !before) return [];
  const has = (test: Test<"dead"> | Test<"live">, word: string) =>
    test.facts.list.some((fact) => fact.word === word) || test.facts.broken.includes(word);
  return words.filter((word) => has(before, word) && !has(latest, word));
}

export default wayRule({
  id: "drift/retest-skips",
  severity: "information",
  since: "0.1",
  title: "A later test that leaves out what the earlier one had.",
  why: "The latest tests are the ones that count. A reading that only the earlier ones have is not judged again: write it anew, or LIM with the reason.",
  clauses: ["643.1", "652.1"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `way 1 radial "Yard lights" {
  dead 2021-03-04 {
    R1+R2       0.41 Ω
    insulation  500 V  L-E >999 MΩ
  }
  dead 2026-03-04 {
  ^^^^
    insulation  500 V  L-E 310 MΩ
  }
}`,
      good: `way 1 radial "Yard lights" {
  dead 2021-03-04 {
    R1+R2       0.41 Ω
    insulation  500 V  L-E >999 MΩ
  }
  dead 2026-03-04 {
    R1+R2       0.42 Ω
    insulation  500 V  L-E 310 MΩ
  }
}`,
    },
  ],
  check({ deadTests, liveTests }, report) {
    for (const [tests, words] of [
      [deadTests, deadWords],
      [liveTests, liveWords],
    ] as const) {
      const missing = skipped(tests, words);
      const [latest, before] = tests;
      if (missing.length === 0 || !latest || !before) continue;
      report(wordSpot(latest.header), {
        message: `The tests of ${before.on} had ${missing.join(", ")}; those of ${latest.on} do not. Measure again, or say why not.`,
        related: [{ spot: wordSpot(before.header), message: `The tests of ${before.on}.` }],
      });
    }
  },
});
