import { readArgs } from "../../../grammar/readings.ts";
import { rowOf } from "../../../grammar/vocabulary.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { keyAt } from "../../model/fact-values.ts";
import { type Fact, isAbsent, readingAt } from "../../model/values.ts";
import type { DatedTest } from "../../readings/series.ts";
import { visitsOf } from "../../readings/visits.ts";
import { comparison } from "../../tables/comparison.ts";
import { boardRule, wordSpot } from "../frame/rule.ts";

/** A reading that was taken at both visits. */
interface Pair {
  readonly same: boolean;
  readonly now: Fact;
  readonly on: string;
  readonly before: string;
}

export default boardRule({
  id: "drift/copied-from-earlier",
  severity: "warning",
  since: "0.1",
  title: "All readings of a board are those of the earlier test, to the last digit.",
  why: "No two visits read alike throughout: the temperature, the leads and the meter differ, and insulation never shows the same three figures again on every circuit. Where they do, the earlier sheet was copied. Test again, or mark the readings as from-record.",
  clauses: ["643.1", "651.2"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `way 1 radial "Lights" {
  dead 2025-03-04 {
    R1+R2        0.41 Ω
    insulation   500 V  L-N 672 MΩ  L-E 607 MΩ  N-E 590 MΩ
  }
  live 2025-03-04 { Zs 0.71 Ω }
  dead 2026-03-10 {
  ^^^^
    R1+R2        0.41 Ω
    insulation   500 V  L-N 672 MΩ  L-E 607 MΩ  N-E 590 MΩ
  }
  live 2026-03-10 { Zs 0.71 Ω }
}
way 2 radial "Oven" {
  dead 2025-03-04 {
    R1+R2        0.22 Ω
    insulation   500 V  L-N 410 MΩ  L-E 388 MΩ  N-E 365 MΩ
  }
  dead 2026-03-10 {
    R1+R2        0.22 Ω
    insulation   500 V  L-N 410 MΩ  L-E 388 MΩ  N-E 365 MΩ
  }
}`,
      good: `way 1 radial "Lights" {
  dead 2025-03-04 {
    R1+R2        0.41 Ω
    insulation   500 V  L-N 672 MΩ  L-E 607 MΩ  N-E 590 MΩ
  }
  live 2025-03-04 { Zs 0.71 Ω }
  dead 2026-03-10 {
    R1+R2        0.42 Ω
    insulation   500 V  L-N 540 MΩ  L-E 481 MΩ  N-E 590 MΩ
  }
  live 2026-03-10 { Zs 0.71 Ω }
}
way 2 radial "Oven" {
  dead 2025-03-04 {
    R1+R2        0.22 Ω
    insulation   500 V  L-N 410 MΩ  L-E 388 MΩ  N-E 365 MΩ
  }
  dead 2026-03-10 {
    R1+R2        0.22 Ω
    insulation   500 V  L-N 404 MΩ  L-E 380 MΩ  N-E 371 MΩ
  }
}`,
    },
  ],
  check({ board, studies }, report) {
    const pairs = studies.flatMap(pairsOf);
    const [first] = pairs;
    // Low resistances read alike by chance where they are few; figures of many circuits do not.
    if (!first || pairs.length < comparison.copiedReadings.value || pairs.some(({ same }) => !same)) return;
    report(wordSpot(first.now), {
      message: `All ${pairs.length} readings of board ${board.head.name} on ${first.on} are those of ${first.before} to the last digit: were they taken again? If not, write from-record.`,
      source: comparison.copiedReadings.source,
    });
  },
});

function pairsOf({ deadTests, liveTests }: WayStudy): Pair[] {
  return [deadTests, liveTests].flatMap((tests: readonly DatedTest[]) => {
    const [now, before] = visitsOf(tests);
    if (!now || !before) return [];
    const earlier = readingsOf(before.tests);
    return [...readingsOf(now.tests)].flatMap(([key, reading]): Pair[] => {
      const other = earlier.get(key);
      const header = now.tests[0]?.header;
      return other === undefined || !header
        ? []
        : [{ same: other === reading, now: header, on: now.on, before: before.on }];
    });
  });
}

/** The exact figures of a visit by what they are of; a bound is the same each time without being copied. */
function readingsOf(tests: readonly DatedTest[]): Map<string, string> {
  const found = new Map<string, string>();
  for (const { facts } of tests) {
    for (const fact of facts?.list ?? []) {
      const row = facts && rowOf(facts.kind, fact.word);
      if (!row?.reads || fact.provenance !== "measured") continue;
      const key = row.reads.key.map((name) => keyAt(fact, name)).join(" ");
      for (const { name, meter } of readArgs(row)) {
        const value = readingAt(fact, name);
        if (!meter || !value || isAbsent(value) || value.sign !== "=") continue;
        found.set(`${fact.word} ${key} ${name}`, fact.segment.text.slice(value.start, value.end).replace(/\s+/g, " "));
      }
    }
  }
  return found;
}
