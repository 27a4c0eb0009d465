import { milliseconds } from "../../calc/result.ts";
import { latestRcdTests, rcdLabel, windowOf } from "../../readings/rcd-tests.ts";
import { capital } from "../../text/words.ts";
import { amount, amountOf, boardRule, factSpot, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/tripped-at-half",
  severity: "error",
  since: "0.1",
  title: "An RCD trips at ½ × IΔn.",
  why: "It must not trip at half the rated residual current. Either leakage of the circuit adds to the test current, or the device is faulty. Clamp the leakage, then test with the loads disconnected.",
  opens: true,
  clauses: ["643.8", "531.3.2"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 0.5x 187 ms
                            ^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 0.5x no-trip
    rcd          30 mA 1x 24.1 ms
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    for (const test of latestRcdTests(context, studies)) {
      const { device, fact, time, multiple } = test;
      if (multiple?.value !== 0.5 || !time || fact.args.noTrip) continue;
      const least = windowOf(test, context)?.least;
      if (!least || time.value >= least.value || time.sign === ">") continue;
      report(valueSpot(fact, time), {
        message: `${device ? capital(rcdLabel(device)) : "The RCD"} tripped at ½ × IΔn in ${milliseconds(time.value)}, where it must not: look for leakage on the circuit first.`,
        value: amount(time.value, "s"),
        limit: amountOf(least),
        least: true,
        steps: least.steps,
        source: least.source,
        // Since 2022 no test at half is required: tripping early is a nuisance, and no danger.
        ...(context.edition?.typeAcRestricted ? { severity: "warning" as const } : {}),
        related: device ? [{ spot: factSpot(device.fact), message: `RCD tested: ${rcdLabel(device)}.` }] : [],
      });
    }
  },
});
