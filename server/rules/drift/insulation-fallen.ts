import { below } from "../../analysis/compare.ts";
import { megohms } from "../../calc/result.ts";
import { measured, type Quantity, type Reading } from "../../model/values.ts";
import { comparison } from "../../tables/comparison.ts";
import { amount, valueSpot, wayRule } from "../rule.ts";

const pairs = ["L-N", "L-E", "N-E", "L-L"] as const;

/** Whether the later reading is surely below the share of the earlier: a bound above leaves it open. */
function fallen(now: Quantity, then: Quantity): boolean {
  if (now.sign === ">" || then.sign === "<") return false;
  return below(now.value, then.value * comparison.insulationLeft.value);
}

export default wayRule({
  id: "drift/insulation-fallen",
  severity: "warning",
  since: "0.1",
  title: "An insulation resistance that has fallen far since the test before.",
  why: "It may still pass, but something has changed: damp, heat, or a cable that was caught. Find it now, before it is a fault.",
  clauses: ["643.3", "652.1"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `way 1 radial "Yard lights" {
  dead 2021-03-04 {
    insulation  500 V  L-E >999 MΩ
  }
  dead 2026-03-04 {
    insulation  500 V  L-E 12 MΩ
                           ^^^^^
  }
}`,
      good: `way 1 radial "Yard lights" {
  dead 2021-03-04 {
    insulation  500 V  L-E >999 MΩ
  }
  dead 2026-03-04 {
    insulation  500 V  L-E 310 MΩ
  }
}`,
    },
  ],
  check({ deadTests }, report) {
    const [latest, ...before] = deadTests;
    for (const fact of latest?.facts.all("insulation") ?? []) {
      for (const pair of pairs) {
        const now = measured(fact.args[pair] as Reading | undefined);
        const older = before.flatMap((test) => test.facts.all("insulation").map((one) => ({ on: test.on, one })));
        const match = older.find(
          ({ one }) => one.args.voltage.value === fact.args.voltage.value && measured(one.args[pair]),
        );
        const then = match && measured(match.one.args[pair]);
        if (!now || !match || !then || !fallen(now, then)) continue;
        report(valueSpot(fact, now), {
          message: `${pair} fell from ${then.sign === ">" ? "over " : ""}${megohms(then.value)} on ${match.on} to ${megohms(now.value)}. What has changed: damp, heat, or something newly connected?`,
          value: amount(now.value, "Ω"),
          limit: amount(then.value * comparison.insulationLeft.value, "Ω"),
          least: true,
          source: comparison.insulationLeft.source,
          related: [{ spot: valueSpot(match.one, then), message: `The reading on ${match.on}.` }],
        });
      }
    }
  },
});
