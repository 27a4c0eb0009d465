import { testDaysOf } from "../../analysis/instruments.ts";
import { installationRule, wordSpot } from "../rule.ts";
import { wordsAfter } from "../writing.ts";

const due: ReadonlySet<string> = new Set(["dead-tested", "tested"]);

export default installationRule({
  id: "instrument/not-named",
  severity: "information",
  since: "0.1",
  title: "Tests that do not say with which instrument they were made.",
  why: "A doubtful reading is traced through its instrument: without the name nobody knows which other readings are doubtful too.",
  clauses: ["643.1"],
  examples: [
    {
      setting: { stage: "tested", before: 'instrument M1 "Multifunction tester"' },
      bad: `way 1 radial "Oven" {
  live 2026-03-05 {
  ^^^^
    Zs  0.62 Ω
  }
}`,
      good: `way 1 radial "Oven" {
  live 2026-03-05 with M1 {
    Zs  0.62 Ω
  }
}`,
    },
  ],
  check(installation, report) {
    if (!due.has(installation.head.facts.one("stage")?.args.stage.value ?? "")) return;
    const names = [...installation.names.instruments.keys()];
    for (const day of testDaysOf(installation)) {
      if (day.with.length > 0) continue;
      report(wordSpot(day.header), {
        message: `With which instrument was this measured on ${day.on.value}? Write “with” and its name after the date.`,
        fixes: names.slice(0, 5).flatMap((name) => wordsAfter(day.header, `with ${name}`)),
      });
    }
  },
});
