import { practiceOf } from "../../calc/practice.ts";
import { milliseconds, plain } from "../../calc/result.ts";
import { latestRcdTests } from "../../readings/rcd-tests.ts";
import { misread } from "../common/writing.ts";
import { amount, amountOf, boardRule, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/time-too-short",
  severity: "warning",
  since: "0.1",
  title: "A trip time is shorter than any RCD can achieve.",
  why: "Some meters show seconds: 0.028 s is 28 ms. Recorded as 0.028 ms it passes every limit and proves nothing.",
  clauses: ["643.8"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device  BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd  30 mA 1x 0.024 ms
                  ^^^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device  BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd  30 mA 1x 24 ms
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    const shortest = practiceOf("rcd-shortest");
    for (const { fact, time } of latestRcdTests(context, studies)) {
      if (!time || time.value <= 0 || time.value >= shortest.value || time.sign === ">") continue;
      const inSeconds = `${plain(time.value * 1e6, 1)} ms`;
      report(valueSpot(fact, time), {
        message: `No RCD trips within ${milliseconds(shortest.value)}: if the meter showed seconds, write ${inSeconds}.`,
        value: amount(time.value, "s"),
        limit: amountOf(shortest),
        steps: shortest.steps,
        source: shortest.source,
        fixes: [misread(fact, time, inSeconds, "Seconds written as milliseconds")],
      });
    }
  },
});
