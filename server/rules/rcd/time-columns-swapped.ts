import { milliseconds } from "../../calc/result.ts";
import { latestRcdTests, type RcdTest, windowOf } from "../../readings/rcd-tests.ts";
import { boardRule, valueSpot } from "../frame/rule.ts";

/** The time at one times the rating that a time at five times belongs with: same block, same device. */
const partnerOf = (five: RcdTest, tests: readonly RcdTest[]): RcdTest | undefined =>
  tests.find(
    (one) =>
      one.test === five.test &&
      one.multiple?.value === 1 &&
      one.time?.sign === "=" &&
      one.device?.fact === five.device?.fact &&
      one.fact.args.name?.value === five.fact.args.name?.value,
  );

export default boardRule({
  id: "rcd/time-columns-swapped",
  severity: "warning",
  since: "0.1",
  title: "An RCD is slower at 5 × IΔn than at 1 × IΔn.",
  why: "More current makes an RCD trip sooner, never later. Most likely the two figures were entered the wrong way round, so neither proves what it should.",
  clauses: ["643.8"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 11.2 ms
    rcd          30 mA 5x 27.6 ms
                          ^^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 27.6 ms
    rcd          30 mA 5x 11.2 ms
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    const tests = latestRcdTests(context, studies);
    for (const five of tests) {
      const { time, multiple, fact } = five;
      if (multiple?.value !== 5 || !time || time.sign !== "=" || time.value === 0) continue;
      // Too slow at five times is reported by itself, and mentions that it looks like a time at 1×.
      const greatest = windowOf(five, context)?.greatest;
      if (greatest && time.value > greatest.value) continue;
      const one = partnerOf(five, tests);
      if (!one?.time || one.time.value === 0 || time.value <= one.time.value) continue;
      report(valueSpot(fact, time), {
        message: `${milliseconds(time.value)} at 5 × IΔn is slower than ${milliseconds(one.time.value)} at 1 × IΔn: were the two swapped?`,
        related: [{ spot: valueSpot(one.fact, one.time), message: `At 1 × IΔn: ${milliseconds(one.time.value)}.` }],
      });
    }
  },
});
