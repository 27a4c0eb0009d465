import { isAbsent } from "../../model/values.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "live/function-failed",
  severity: "error",
  since: "0.1",
  title: "A functional test failed.",
  why: "A switch, an interlock or a control that fails its functional test is not fit for use, whatever the readings of the cable.",
  opens: true,
  clauses: ["643.10"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Roller door" {
  live 2026-03-05 {
    function     wrong
    ^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Roller door" {
  live 2026-03-05 {
    function     ok
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bedroom sockets" {
  live 2026-03-05 {
    afdd-test    wrong
    ^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Bedroom sockets" {
  live 2026-03-05 {
    afdd-test    ok
  }
}`,
    },
  ],
  check({ liveTests, way }, report) {
    for (const [word, what] of [
      ["function", `The functional test of way ${way.id}`],
      ["afdd-test", `The test of the AFDD of way ${way.id}`],
    ] as const) {
      // A day on which nothing of it was tried again, or could be, leaves it as it was.
      const fact = liveTests
        .flatMap(({ facts }) => facts.one(word) ?? [])
        .find(({ args }) => args.verdict && !isAbsent(args.verdict));
      const verdict = fact?.args.verdict;
      if (!fact || !verdict || !("value" in verdict) || verdict.value !== "wrong") continue;
      report(factSpot(fact), { message: `${what} failed: put it right and test it again.` });
    }
  },
});
