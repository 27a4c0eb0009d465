import { type Test, workOf } from "../../circuit/supply.ts";
import type { WordIn } from "../../model/values.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "live/before-dead",
  severity: "warning",
  since: "0.1",
  title: "A live test was made before the first dead tests.",
  why: "Continuity, insulation and polarity are what make new wiring safe to energise, so they are tested first. Either a date is wrong, or the circuit was energised untested.",
  clauses: ["643.1", "643.2"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  dead 2026-03-05 {
    R1+R2        0.31 Ω
  }
  live 2026-03-04 {
       ^^^^^^^^^^
    Zs           0.62 Ω
  }
}`,
      good: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2        0.31 Ω
  }
  live 2026-03-05 {
    Zs           0.62 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  dead 2026-03-03 {
    R1+R2        0.31 Ω
  }
  live 2026-03-04 {
       ^^^^^^^^^^
    Zs           0.62 Ω
  }
  dead 2026-03-05 {
    insulation   500 V  L-N 310 MΩ  L-E 290 MΩ  N-E 330 MΩ
  }
}`,
      good: `way 1 radial "Water heater" {
  dead 2026-03-03 {
    R1+R2        0.31 Ω
    insulation   500 V  L-N 320 MΩ  L-E 300 MΩ  N-E 340 MΩ
  }
  live 2026-03-04 {
    Zs           0.62 Ω
  }
  dead 2026-03-05 {
    insulation   500 V  L-N 310 MΩ  L-E 290 MΩ  N-E 330 MΩ
  }
}`,
    },
  ],
  check(study, report) {
    const { deadTests, liveTests, facts } = study;
    // What is in service already is often measured live before it is switched off.
    if (workOf(study) === "existing" || facts.isUnread("dead")) return;
    const firstDead = deadTests.at(-1);
    const firstLive = liveTests.at(-1);
    if (!firstDead?.on || !firstLive?.on) return;
    const header = facts.all("live").find((fact) => fact === firstLive.header);
    const late =
      firstLive.on < firstDead.on
        ? { test: firstDead, what: "the first dead tests" }
        : lateKind(deadTests, firstLive.on);
    const dead = late && facts.all("dead").find((fact) => fact === late.test.header);
    if (!header || !dead) return;
    report(valueSpot(header, header.args.on), {
      message: `Live tests are dated ${firstLive.on}, before ${late.what} on ${late.test.on}. Which date is right?`,
      related: [
        { spot: valueSpot(dead, dead.args.on), message: `${late.what.charAt(0).toUpperCase()}${late.what.slice(1)}.` },
      ],
    });
  },
});

/** Polarity may be proved live as well, and a ring has its ends. */
const kinds: readonly (readonly [what: string, words: readonly WordIn<"dead">[]])[] = [
  ["the first test of continuity", ["R1+R2", "R2", "ends"]],
  ["the first test of insulation", ["insulation"]],
];

/** A kind of dead test that was made for the first time only after the circuit was live. */
function lateKind(tests: readonly Test<"dead">[], live: string): { test: Test<"dead">; what: string } | undefined {
  for (const [what, words] of kinds) {
    const test = tests.findLast(({ facts }) => words.some((word) => facts.has(word)));
    if (test && test.on > live) return { test, what };
  }
  return undefined;
}
