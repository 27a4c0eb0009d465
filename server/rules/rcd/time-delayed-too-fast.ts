import { fallsShort } from "../../calc/compare.ts";
import { milliseconds } from "../../calc/result.ts";
import { latestRcdTests, windowOf } from "../../readings/rcd-tests.ts";
import { amount, amountOf, boardRule, factSpot, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/time-delayed-too-fast",
  severity: "error",
  since: "0.1",
  title: "A time-delayed RCD trips without its delay.",
  why: "It would trip together with the RCDs downstream and disconnect the whole board, or it is not the delayed device that is recorded. Look at the marking, then test again.",
  clauses: ["536.4.1.4", "643.7.1"],
  examples: [
    {
      setting: {
        stage: "tested",
        board:
          "fed-from supply\nrcd main BS EN 61008 100 A 100 mA type A delayed\nlive 2026-03-05 {\nrcd main 100 mA 1x 210 ms\n}",
      },
      bad: `way 1 radial "Bench sockets" {
  behind       main
  live 2026-03-05 {
    rcd          100 mA 1x 31.0 ms
                           ^^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  behind       main
}`,
    },
  ],
  check({ context, studies }, report) {
    for (const test of latestRcdTests(context, studies)) {
      const { device, fact, time, multiple } = test;
      const least = windowOf(test, context)?.least;
      if (!device?.delayed || !least || !time || time.value === 0 || time.sign === ">" || multiple?.value === 0.5)
        continue;
      if (!fallsShort(time.value, least.value) && time.sign === "=") continue;
      if (time.sign === "<" && time.value > least.value) continue;
      report(valueSpot(fact, time), {
        message: `${milliseconds(time.value)} is below the ${milliseconds(least.value)} a delayed RCD waits at ${multiple?.value} × IΔn: is it a delayed device?`,
        value: amount(time.value, "s"),
        limit: amountOf(least),
        least: true,
        steps: least.steps,
        source: least.source,
        related: [{ spot: factSpot(device.fact), message: "RCD recorded as delayed." }],
      });
    }
  },
});
