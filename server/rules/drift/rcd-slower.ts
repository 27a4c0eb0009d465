import { exceeds } from "../../calc/compare.ts";
import { milliseconds, step } from "../../calc/result.ts";
import { everyRcdTest, latestRcdTests, type RcdTest } from "../../readings/rcd-tests.ts";
import { uncertaintyIn, uncertaintyInTest } from "../../readings/uncertainty.ts";
import { comparison } from "../../tables/comparison.ts";
import { driftUncertainty } from "../common/uncertainty-words.ts";
import { amount, boardRule, factSpot, valueSpot } from "../frame/rule.ts";

const isRead = ({ time, fact }: RcdTest): boolean => time?.sign === "=" && fact.provenance === "measured";

const alike = (one: RcdTest, other: RcdTest): boolean =>
  one.device !== undefined &&
  one.device.fact === other.device?.fact &&
  one.multiple !== undefined &&
  one.multiple.value === other.multiple?.value;

export default boardRule({
  id: "drift/rcd-slower",
  severity: "information",
  since: "0.1",
  title: "An RCD trips much more slowly than at the previous test.",
  why: "It may still be within its limit. A mechanism that stiffens gets slower before it sticks: press its test button several times, test again, and consider replacing it.",
  clauses: ["643.8", "651.2"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2021-03-05 {
    rcd          30 mA 1x 24.1 ms
  }
  live 2026-03-05 {
    rcd          30 mA 1x 131 ms
                          ^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2021-03-05 {
    rcd          30 mA 1x 24.1 ms
  }
  live 2026-03-05 {
    rcd          30 mA 1x 26.8 ms
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    const all = everyRcdTest(context, studies);
    const latest = latestRcdTests(context, studies);
    if (all.length === latest.length) return;
    for (const test of latest) {
      const then = all.find((other) => other.test.on < test.test.on && alike(test, other) && isRead(other));
      if (!isRead(test) || !test.time || !then?.time) continue;
      const [now, was] = [test.time.value, then.time.value];
      const uncertainties = [test, then].map((one) => ({
        uncertainty: one.time && uncertaintyInTest(context.names, one.test, one.fact, one.time),
      }));
      const meters = uncertainties.reduce((sum, one) => sum + uncertaintyIn(one), 0);
      const allowed = Math.max(comparison.tripTimeRise.value * was, comparison.tripTimeRiseLeast.value, meters);
      if (!exceeds(now - was, allowed)) continue;
      report(valueSpot(test.fact, test.time), {
        message: `The trip time rose from ${milliseconds(was)} on ${then.test.on} to ${milliseconds(now)}: press the test button several times and test again.`,
        value: amount(now, "s"),
        limit: amount(was + allowed, "s"),
        steps: [
          step(`longer since ${then.test.on}`, `${milliseconds(now)} − ${milliseconds(was)}`, milliseconds(now - was)),
          ...driftUncertainty(...uncertainties),
        ],
        source: comparison.tripTimeRise.source,
        related: [{ spot: factSpot(then.fact), message: `Trip time ${milliseconds(was)} on ${then.test.on}.` }],
      });
    }
  },
});
