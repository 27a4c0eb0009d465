import type { WordRow } from "../../../grammar/params.ts";
import { readArgs } from "../../../grammar/readings.ts";
import { rowOf } from "../../../grammar/vocabulary.ts";
import { type Fact, innerOf } from "../../model/values.ts";
import { deadOfBoard, supplyTests } from "../../readings/meter-tests.ts";
import { liveOfBoard } from "../../readings/rcd-tests.ts";
import { keyText, thingsOf } from "../../readings/reading-name.ts";
import type { DatedTest } from "../../readings/series.ts";
import { visitsOf } from "../../readings/visits.ts";
import { capital } from "../../text/words.ts";
import { listed } from "../common/dead-words.ts";
import { installationRule, type Reporter, wordSpot } from "../frame/rule.ts";

/** Every reading of some tests that is taken again, by what tells it from others and by what a person calls it. */
function readingsOf(tests: readonly DatedTest[]): Map<string, string> {
  const found = new Map<string, string>();
  for (const { facts } of tests) {
    for (const fact of facts?.list ?? []) {
      const row = rowOf(facts.kind, fact.word);
      if (!row?.reads?.again) continue;
      const things = keyText(thingsOf(row), fact);
      if (row.reads.again === "each-value")
        for (const arg of valuesIn(row, fact)) found.set(`${fact.word} ${things} ${arg}`, `${fact.word} ${arg}`);
      else found.set(`${fact.word} ${things}`, lineName(row, fact, things));
    }
  }
  return found;
}

/** A line of several values is called by what it was read at, “S3”; one of a single value “bonding of water”. */
function lineName({ reads }: WordRow, { word }: Fact, things: string): string {
  if (things.trim() === "") return word;
  return reads?.name.includes("{arg}") ? things : `${word} of ${things.trim()}`;
}

const usualPairs = ["L-N", "L-E", "N-E"] as const;

/** With line and neutral joined there is one reading for all that is required of a single-phase circuit. */
const valuesIn = (row: WordRow, { args }: Fact): readonly string[] =>
  args.joined ? usualPairs : readArgs(row).flatMap(({ name }) => (args[name] === undefined ? [] : [name]));

/** A reading that was left out still counts from the earlier day; the reader of the record has to know. */
function checkTests(tests: readonly DatedTest[], report: Reporter): void {
  if (tests.length < 2) return;
  const [latest, ...before] = visitsOf(tests);
  const [first] = latest?.tests ?? [];
  const [last] = before;
  if (!latest || !first || !last) return;
  const again = readingsOf(latest.tests);
  const broken = latest.tests.flatMap(({ facts }) => facts?.broken ?? []);
  const missing = [...readingsOf(before.flatMap((visit) => visit.tests))]
    .filter(([key]) => !again.has(key) && !broken.includes(key.split(" ")[0] ?? ""))
    .map(([, name]) => name);
  if (missing.length === 0) return;
  const shown = missing.length > 4 ? [...missing.slice(0, 3), `${missing.length - 3} more`] : missing;
  const one = missing.length === 1;
  report(wordSpot(first.header), {
    message: `${capital(listed(shown))} ${one ? "was" : "were"} not read again on ${latest.on}: measure ${one ? "it" : "them"}, or write LIM with the reason.`,
    related: [{ spot: wordSpot(last.tests[0]?.header ?? first.header), message: `Tests dated ${last.on}.` }],
  });
}

export default installationRule({
  id: "drift/retest-incomplete",
  severity: "information",
  since: "0.1",
  title: "A later test leaves out readings that the earlier one had.",
  why: "A reading counts until it is taken again, so one that only the earlier tests have is as old as they are. Measure it again, or write LIM with the reason.",
  clauses: ["643.1", "651.2"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `way 1 radial "Yard lights" {
  dead 2021-03-04 {
    R1+R2        0.41 Ω
    insulation   500 V  L-E >999 MΩ
  }
  dead 2026-03-04 {
  ^^^^
    insulation   500 V  L-E 310 MΩ
  }
}`,
      good: `way 1 radial "Yard lights" {
  dead 2021-03-04 {
    R1+R2        0.41 Ω
    insulation   500 V  L-E >999 MΩ
  }
  dead 2026-03-04 {
    R1+R2        0.42 Ω
    insulation   500 V  L-E 310 MΩ
  }
}`,
    },
  ],
  check({ head }, report) {
    checkTests(supplyTests(innerOf(head.facts.one("supply"), "supply")), report);
  },
  checkBoard({ context, studies }, report) {
    checkTests(deadOfBoard(context), report);
    checkTests(liveOfBoard(context), report);
    for (const { deadTests, liveTests } of studies) {
      checkTests(deadTests, report);
      checkTests(liveTests, report);
    }
  },
});
