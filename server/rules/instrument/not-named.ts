import type { InstallationHead } from "../../model/file.ts";
import type { Names } from "../../model/installation.ts";
import { boardTestDays, ownTestDays, type TestDay } from "../../readings/instruments.ts";
import { wordsAfter } from "../common/writing.ts";
import { installationRule, type Reporter, wordSpot } from "../frame/rule.ts";

const due: ReadonlySet<string> = new Set(["dead-tested", "tested"]);

const isDue = ({ facts }: InstallationHead): boolean => due.has(facts.one("stage")?.args.stage.value ?? "");

function unnamed(days: readonly TestDay[], names: Names, report: Reporter): void {
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
    if (isDue(installation.head)) unnamed(ownTestDays(installation), installation.names, report);
  },
  checkBoard({ board, context }, report) {
    if (!isDue(context.installation)) return;
    const days = boardTestDays(board);
    // Tests that name none at all are one omission, however many there are.
    if (days.length > 1 && days.every((day) => day.with.length === 0))
      report(wordSpot(board.head.header), {
        message: `None of the ${days.length} blocks of tests of board ${board.head.name} names its instrument: write “with” and the name after each date.`,
      });
    else unnamed(days, context.names, report);
  },
});
