import { readArgs } from "../../../grammar/readings.ts";
import { rowOf } from "../../../grammar/vocabulary.ts";
import { keyAt } from "../../model/fact-values.ts";
import { type Fact, isAbsent, type Reading, readingAt } from "../../model/values.ts";
import { deadOfBoard } from "../../readings/meter-tests.ts";
import { liveOfBoard } from "../../readings/rcd-tests.ts";
import type { DatedTest } from "../../readings/series.ts";
import { boardRule, factSpot, type Reporter, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "record/tests-contradict",
  severity: "warning",
  since: "0.1",
  title: "Two tests of one day and one instrument give different readings.",
  why: "Only one of two readings of the same thing can stand, and the order of the file must not choose it: a merge that kept both sides makes just this. Keep the one that is right, or strike the other out with the reason.",
  clauses: ["643.1"],
  examples: [
    {
      bad: `way 1 radial "Lights" {
  live 2026-03-06 with M1 {
    Zs           0.43 Ω
  }
  live 2026-03-06 with M1 {
    Zs           0.41 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Lights" {
  live 2026-03-06 with M1 {
    Zs           0.43 Ω
    struck-out   by "R.M." "Read before the joint was made again"
  }
  live 2026-03-06 with M1 {
    Zs           0.41 Ω
  }
}`,
      setting: { before: 'instrument M1 "Tester"' },
    },
  ],
  check({ context, studies }, report) {
    checkTests(deadOfBoard(context), report);
    checkTests(liveOfBoard(context), report);
    for (const { deadTests, liveTests } of studies) {
      checkTests(deadTests, report);
      checkTests(liveTests, report);
    }
  },
});

function checkTests(tests: readonly DatedTest[], report: Reporter): void {
  if (tests.length < 2) return;
  for (const [index, later] of tests.entries())
    for (const earlier of tests.slice(index + 1)) {
      if (later.on === "" || earlier.on !== later.on || earlier.with.join() !== later.with.join()) continue;
      compare(later, earlier, report);
    }
}

function compare(later: DatedTest, earlier: DatedTest, report: Reporter): void {
  for (const fact of later.facts?.list ?? []) {
    const row = rowOf(later.facts.kind, fact.word);
    if (!row?.reads) continue;
    const other = earlier.facts?.list.find(
      (one) => one.word === fact.word && keyOf(one, row.reads?.key) === keyOf(fact, row.reads?.key),
    );
    if (!other) continue;
    for (const { name } of readArgs(row)) {
      const [now, before] = [readingAt(fact, name), readingAt(other, name)];
      if (!now || !before || isAbsent(now) || isAbsent(before)) continue;
      const [one, two] = [textOf(fact, now), textOf(other, before)];
      if (one === two) continue;
      report(valueSpot(fact, now), {
        message: `${one} here and ${two} in other tests of ${later.on} with the same instrument: which stands? Strike the other out with the reason.`,
        related: [{ spot: factSpot(other), message: `The other reading, ${two}.` }],
      });
      return;
    }
  }
}

const keyOf = (fact: Fact, key: readonly string[] = []): string => key.map((name) => keyAt(fact, name)).join(" ");

const textOf = ({ segment }: Fact, { start, end }: Reading): string =>
  segment.text.slice(start, end).replace(/\s+/g, " ");
