import { latestRcdTests } from "../../readings/rcd-tests.ts";
import { boardRule, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/time-zero",
  severity: "error",
  since: "0.1",
  title: "An RCD trip time is recorded as 0 ms.",
  why: "No mechanism opens in 0 ms. Either the test was not made, or the device had already tripped on leakage of the circuit. Clamp the leakage, and test again.",
  clauses: ["643.7.1", "643.8"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 0 ms
                          ^^^^
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
    for (const { fact, time } of latestRcdTests(context, studies)) {
      if (time?.value !== 0 || time.sign !== "=") continue;
      report(valueSpot(fact, time), {
        message: "No RCD trips in 0 ms: was the test made, or had the device already tripped?",
      });
    }
  },
});
