import { asBlock, isAbsent } from "../../model/values.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "record/polarity-disagrees",
  severity: "error",
  since: "0.1",
  title: "Polarity of a circuit is recorded as correct although one of its points is wrong.",
  why: "A circuit is correct only if every point is. An outlet with line and neutral reversed can be live with its switch off.",
  opens: true,
  clauses: ["643.6"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 ring "Hall sockets" {
  run          A 7 m S1 6 m S2 9 m A
  dead 2026-03-04 {
    at S1        L-N 0.16 Ω  polarity wrong
    polarity     ok
    ^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 ring "Hall sockets" {
  run          A 7 m S1 6 m S2 9 m A
  dead 2026-03-04 {
    at S1        L-N 0.16 Ω  polarity ok
    polarity     ok
  }
}`,
    },
  ],
  check({ dead, live }, report) {
    // Both kinds of block write polarity and points alike.
    for (const facts of [dead?.facts, live && asBlock<"dead">(live.facts)]) {
      const whole = facts?.one("polarity");
      if (!whole || isAbsent(whole.args.verdict) || whole.args.verdict.value !== "ok") continue;
      for (const at of facts?.all("at") ?? []) {
        const { polarity, point } = at.args;
        if (!polarity || isAbsent(polarity) || polarity.value !== "wrong") continue;
        report(factSpot(whole), {
          message: `Polarity is recorded as correct, but wrong at ${point.value}: put it right there and test again.`,
          related: [{ spot: valueSpot(at, polarity), message: `Polarity wrong at ${point.value}.` }],
        });
      }
    }
  },
});
