import { exceeds, fallsShort } from "../../calc/compare.ts";
import { ohms, percent, step } from "../../calc/result.ts";
import { deadSeriesOfWay, type Series, type Taken } from "../../readings/series.ts";
import { uncertaintyIn } from "../../readings/uncertainty.ts";
import { comparison } from "../../tables/comparison.ts";
import { daysBetween } from "../../text/days.ts";
import { driftUncertainty } from "../common/uncertainty-words.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

/** What is read of conductors from end to end: a point may be read at another accessory. */
const conductors: readonly string[] = ["R1+R2", "R2", "ends"];

export default wayRule({
  id: "drift/resistance-fallen",
  severity: "information",
  since: "0.1",
  title: "A conductor has less than half of the resistance it had.",
  why: "Copper does not improve. Either what was wrong has been repaired, or one of the two was read at another place, or something beside the conductor carries part of it now and hides its state.",
  clauses: ["643.2.1", "651.2"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `way 1 radial "Water heater" {
  dead 2021-03-05 {
    R1+R2        1.40 Ω
  }
  dead 2026-03-05 {
    R1+R2        0.35 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  dead 2021-03-05 {
    R1+R2        0.37 Ω
  }
  dead 2026-03-05 {
    R1+R2        0.35 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const reported = new Set<unknown>();
    for (const series of deadSeriesOfWay(study, ["joint"])) {
      const { name, now } = series;
      const then = conductors.includes(now.fact.word) ? fallenFrom(series) : undefined;
      // The ends of a ring are on one line.
      if (!then || reported.has(now.fact)) continue;
      reported.add(now.fact);
      report(factSpot(now.fact), {
        message: `${name} fell from ${ohms(then.quantity.value)} on ${then.on} to ${ohms(now.quantity.value)}. Note what was repaired, or read it again at the same place without parallel paths.`,
        value: amount(now.value, "Ω"),
        limit: amount(comparison.resistanceLeft.value * then.value, "Ω"),
        least: true,
        steps: [
          step(
            `left of ${then.on}`,
            `${ohms(now.value)} / ${ohms(then.value)}`,
            percent((100 * now.value) / then.value),
          ),
          ...driftUncertainty(now, then),
        ],
        source: comparison.resistanceLeft.source,
        related: [{ spot: factSpot(then.fact), message: `${name} ${ohms(then.quantity.value)} on ${then.on}.` }],
      });
    }
  },
});

/** The latest reading of an earlier visit: what fell within one was mended there. */
function fallenFrom({ now, before }: Series): Taken | undefined {
  const then = before.find(({ on }) => daysBetween(on, now.on) > comparison.visit.value);
  if (!then || !fallsShort(now.value, comparison.resistanceLeft.value * then.value)) return undefined;
  const doubt = Math.max(comparison.resistanceRiseLeast.value, uncertaintyIn(now) + uncertaintyIn(then));
  return exceeds(then.value - now.value, doubt) ? then : undefined;
}
