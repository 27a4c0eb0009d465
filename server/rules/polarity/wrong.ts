import type { WayStudy } from "../../circuit/way.ts";
import { wordAt, writtenAt } from "../../model/fact-values.ts";
import type { Fact, Val } from "../../model/values.ts";
import { relatedFact } from "../common/dead-words.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "polarity/wrong",
  severity: "error",
  since: "0.1",
  title: "Polarity is wrong.",
  why: "A switch or fuse in the neutral leaves the outlet live when it is off, and the shell of a lampholder can be live. Isolate, put it right, and test again under a later date.",
  opens: true,
  clauses: ["643.6"],
  examples: [
    {
      bad: `way 1 radial "Lights" {
  dead 2026-03-04 {
    R1+R2        0.61 Ω
    polarity     wrong
                 ^^^^^
  }
}`,
      good: `way 1 radial "Lights" {
  dead 2026-03-04 {
    polarity     wrong
  }
  dead 2026-03-05 {
    R1+R2        0.61 Ω
    polarity     ok
  }
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    at S1        L-N 0.22 Ω  L-E 0.29 Ω  polarity ok
    at S2        L-N 0.22 Ω  L-E 0.29 Ω  polarity wrong
                                                  ^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    at S1        L-N 0.22 Ω  L-E 0.29 Ω  polarity ok
    at S2        L-N 0.22 Ω  L-E 0.29 Ω  polarity ok
  }
}`,
    },
  ],
  check(study, report) {
    if (study.isSpare) return;
    for (const { fact, verdict, at, header } of latestVerdicts(study)) {
      if (verdict.value !== "wrong") continue;
      report(valueSpot(fact, verdict), {
        message: `Polarity is wrong${at === undefined ? "" : ` at ${at}`}: isolate, put it right, and record the new test below this one.`,
        related: [relatedFact(header, "The test in which polarity was found wrong.")],
      });
    }
  },
});

interface Verdict {
  readonly fact: Fact;
  readonly verdict: Val<string>;
  readonly at: string | undefined;
  readonly header: Fact;
}

/** The argument that says of a line of a test whether its polarity is right. */
const verdictOn: ReadonlyMap<string, string> = new Map([
  ["polarity", "verdict"],
  ["at", "polarity"],
]);

/** The latest result for the circuit and for each of its points, dead and live apart. */
function latestVerdicts({ deadTests, liveTests }: WayStudy): Verdict[] {
  const found = new Map<string, Verdict>();
  for (const [kind, tests] of [
    ["dead", deadTests],
    ["live", liveTests],
  ] as const) {
    for (const test of tests) {
      for (const fact of test.facts.list) {
        const name = verdictOn.get(fact.word);
        const verdict = name === undefined ? undefined : writtenAt(fact, name);
        if (!verdict) continue;
        const at = wordAt(fact, "point");
        const key = `${kind} ${at ?? ""}`;
        if (!found.has(key)) found.set(key, { fact, verdict, at, header: test.header });
      }
    }
  }
  return [...found.values()];
}
