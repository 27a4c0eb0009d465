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
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 0.024 ms
                          ^^^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 24 ms
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    const shortest = practiceOf("rcd-shortest");
    const quick = practiceOf("rcd-quick");
    for (const { fact, time, multiple } of latestRcdTests(context, studies)) {
      if (!time || time.value <= 0 || time.sign === ">") continue;
      if (time.value >= shortest.value) {
        const single = (multiple?.value ?? 1) <= 1;
        if (single && time.value < quick.value)
          report(valueSpot(fact, time), {
            severity: "information",
            message: `${milliseconds(time.value)} at 1 × IΔn is quicker than a mechanism usually opens: was the test current set higher, or the figure read of another test?`,
            value: amount(time.value, "s"),
            steps: quick.steps,
            source: quick.source,
          });
        continue;
      }
      const inSeconds = `${plain(time.value * 1e6, 1)} ms`;
      report(valueSpot(fact, time), {
        message: `No RCD trips within ${milliseconds(shortest.value)}: if the meter showed seconds, write ${inSeconds}.`,
        value: amount(time.value, "s"),
        limit: amountOf(shortest),
        least: true,
        steps: shortest.steps,
        source: shortest.source,
        fixes: [misread(fact, time, inSeconds, "Seconds written as milliseconds")],
      });
    }
  },
});
