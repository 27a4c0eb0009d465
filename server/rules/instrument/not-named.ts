import type { InstallationHead } from "../../model/file.ts";
import type { Names } from "../../model/installation.ts";
import { boardTestDays, ownTestDays, type TestDay } from "../../readings/instruments.ts";
import { wordsAfter } from "../common/writing.ts";
import { installationRule, type Reporter, wordSpot } from "../frame/rule.ts";

const due: ReadonlySet<string> = new Set(["dead-tested", "tested"]);

function unnamed(days: readonly TestDay[], head: InstallationHead, names: Names, report: Reporter): void {
  if (!due.has(head.facts.one("stage")?.args.stage.value ?? "")) return;
  const known = [...names.instruments.keys()];
  for (const day of days) {
    if (day.with.length > 0) continue;
    report(wordSpot(day.header), {
      message: `The instrument used on ${day.on.value} is not named: write “with” and its name after the date.`,
      fixes: known.slice(0, 5).flatMap((name) => wordsAfter(day.header, `with ${name}`)),
    });
  }
}

export default installationRule({
  id: "instrument/not-named",
  severity: "information",
  since: "0.1",
  title: "The instrument used for a test is not named.",
  why: "A questionable reading is traced through its instrument: without the name nobody knows which other readings are questionable as well.",
  clauses: ["643.1"],
  examples: [
    {
      setting: { stage: "tested", before: 'instrument M1 "Multifunction tester"' },
      bad: `way 1 radial "Oven" {
  live 2026-03-05 {
  ^^^^
    Zs           0.62 Ω
  }
}`,
      good: `way 1 radial "Oven" {
  live 2026-03-05 with M1 {
    Zs           0.62 Ω
  }
}`,
    },
  ],
  check(installation, report) {
    unnamed(ownTestDays(installation), installation.head, installation.names, report);
  },
  checkBoard({ board, context }, report) {
    unnamed(boardTestDays(board), context.installation, context.names, report);
  },
});
