import { milliseconds } from "../../calc/result.ts";
import type { Fact, Span } from "../../model/values.ts";
import { latestRcdTests } from "../../readings/rcd-tests.ts";
import { boardRule, type Reporter, valueSpot } from "../frame/rule.ts";

const multiples = ["1x", "5x"];

export default boardRule({
  id: "rcd/time-without-multiple",
  severity: "warning",
  since: "0.1",
  title: "The test current of an RCD test is not stated.",
  why: "28 ms is fine at 1 × IΔn and proves nothing about 5 × IΔn. Without the multiple the time cannot be judged, nor the test repeated.",
  clauses: ["643.7.1", "643.8"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA no-trip
                       ^^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 0.5x no-trip
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 24.1 ms
                       ^^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 24.1 ms
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    for (const { fact, time, multiple } of latestRcdTests(context, studies)) {
      const { noTrip } = fact.args;
      if (noTrip && !multiple) reportNoTrip(fact, noTrip, report);
      if (!time || multiple) continue;
      report(valueSpot(fact, time), {
        message: `The test current of ${milliseconds(time.value)} is not stated: write 1x or 5x before the time.`,
        fixes: multiples.map((text) => ({
          title: `Write ${text}`,
          edits: [{ start: time.start, end: time.start, text: `${text} ` }],
          safe: false,
        })),
      });
    }
  },
});

/** At half its rating that is right, and at its rating the RCD is dead: which of them it was must be told. */
function reportNoTrip(fact: Fact, noTrip: Span, report: Reporter): void {
  report(valueSpot(fact, noTrip), {
    message:
      "At which current it did not trip is not stated: right at 0.5x, no protection at 1x. Write the multiple before it.",
  });
}
