import { rowOf } from "../../../grammar/vocabulary.ts";
import type { Fact, Facts, Val } from "../../model/values.ts";
import { deadOfBoard, supplyTests } from "../../readings/meter-tests.ts";
import { liveOfBoard } from "../../readings/rcd-tests.ts";
import type { DatedTest } from "../../readings/series.ts";
import { visitsOf } from "../../readings/visits.ts";
import { capital } from "../../text/words.ts";
import { listed } from "../common/dead-words.ts";
import { installationRule, type Reporter, wordSpot } from "../frame/rule.ts";

interface NamedArgs {
  readonly point?: Val<string>;
  readonly service?: Val<string>;
  readonly name?: Val<string>;
}

const pairs = ["L-N", "L-E", "N-E"] as const;

/** With line and neutral joined there is one reading for all that is required of a single-phase circuit. */
const pairsOf = (args: Fact["args"]): readonly string[] =>
  args.joined ? pairs : Object.keys(args).filter((name) => name.includes("-"));

/** Every reading of some tests by what a person calls it: “N-E insulation”, “S3”. */
function readingsOf(tests: readonly DatedTest[]): Map<string, string> {
  const found = new Map<string, string>();
  for (const { facts } of tests) {
    for (const { word, args } of facts?.list ?? []) {
      if (!rowOf(facts.kind, word)?.reads?.again) continue;
      const { point, service, name } = args as NamedArgs;
      if (word === "at") found.set(`at ${point?.value}`, `${point?.value}`);
      else if (word === "insulation")
        for (const pair of pairsOf(args)) found.set(`insulation ${pair}`, `insulation ${pair}`);
      else if (word === "bonding") found.set(`bonding ${service?.value}`, `bonding of ${service?.value}`);
      else found.set(name ? `${word} ${name.value}` : word, name ? `${word} of ${name.value}` : word);
    }
    for (const word of facts?.broken ?? []) found.set(word, word);
  }
  return found;
}

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
    checkTests(supplyTests(head.facts.one("supply")?.inner as Facts<"supply"> | undefined), report);
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
