import { exceeds } from "../../calc/compare.ts";
import type { RcdWindow } from "../../calc/rcd-time.ts";
import { milliseconds } from "../../calc/result.ts";
import type { Context } from "../../model/installation.ts";
import { latestRcdTests, type RcdTest, rcdLabel, windowOf } from "../../readings/rcd-tests.ts";
import { uncertaintyInTest } from "../../readings/uncertainty.ts";
import { capital } from "../../text/words.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { amount, amountOf, boardRule, factSpot, valueSpot } from "../frame/rule.ts";

const multipleName = ({ multiple }: RcdTest): string => `${multiple?.value} × IΔn`;

/** A slow time at 5 × IΔn that would pass at 1 × IΔn was probably taken there. */
function hint(test: RcdTest, value: number, context: Context): string {
  const { multiple } = test;
  if (multiple?.value !== 5) return "";
  const atRating = windowOf({ ...test, multiple: { ...multiple, value: 1 } }, context)?.greatest;
  return atRating && value <= atRating.value ? " It looks like a time at 1 × IΔn." : "";
}

/** A meter counts whole milliseconds: what is over 299 ms is not within 300 ms. In seconds. */
const meterStep = 0.001;

export default boardRule({
  id: "rcd/time-over-limit",
  severity: "error",
  since: "0.1",
  title: "An RCD trips too slowly, or not at all.",
  why: "A person who touches a live part depends on this time. Test again with the loads disconnected; if it is still slow, replace the device.",
  opens: true,
  clauses: ["643.7.1", "643.8", "415.1.1"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 342 ms
                          ^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 24.1 ms
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x >200 ms
                          ^^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 200 ms
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x no-trip
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
    rcd          30 mA 1x <500 ms
                          ^^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x <40 ms
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    for (const test of latestRcdTests(context, studies)) {
      const greatest: RcdWindow["greatest"] = windowOf(test, context)?.greatest;
      const { device, fact, time } = test;
      if (!device || !greatest) continue;
      const related = [
        {
          spot: factSpot(device.fact),
          message: `RCD tested: ${device.standard}${device.delayed ? ", delayed" : ""}.`,
        },
      ];
      const limit = { limit: amountOf(greatest), steps: greatest.steps, source: greatest.source, related };
      const most = milliseconds(greatest.value);
      if (fact.args.noTrip) {
        report(valueSpot(fact, fact.args.noTrip), {
          message: `${capital(rcdLabel(device))} did not trip at ${multipleName(test)}; it must within ${most}. It gives no protection: replace it.`,
          ...limit,
        });
      } else if (time?.sign === ">" && time.value + meterStep < greatest.value) {
        report(valueSpot(fact, time), {
          message: `Over ${milliseconds(time.value)} at ${multipleName(test)} does not prove that it trips within ${most}: test it again, and write no-trip if it does not trip.`,
          severity: "warning",
          ...limit,
        });
      } else if (time?.sign === "<" && exceeds(time.value, greatest.value)) {
        report(valueSpot(fact, time), {
          message: `Under ${milliseconds(time.value)} at ${multipleName(test)} does not prove that it trips within ${most}: test it again, and write the time that was read.`,
          severity: "warning",
          ...limit,
        });
      } else if (time && time.sign !== "<" && (time.sign === ">" || exceeds(time.value, greatest.value))) {
        const uncertainty = uncertaintyInTest(context.names, test.test, fact, time);
        report(valueSpot(fact, time), {
          message: `${time.sign === ">" ? "Over " : ""}${milliseconds(time.value)} at ${multipleName(test)} is ${time.sign === ">" && time.value < greatest.value ? "not within" : "longer than"} the ${most} of a ${device.delayed ? "delayed " : ""}${device.standard} RCD.${hint(test, time.value, context)}${withinUncertainty(uncertainty, time.value - greatest.value)}`,
          value: amount(time.value, "s"),
          ...limit,
          sign: time.sign,
          steps: [...greatest.steps, ...uncertaintySteps(uncertainty)],
        });
      }
    }
  },
});
