import { protecting } from "../../analysis/coordination.ts";
import { amps, step } from "../../calc/result.ts";
import { amount, boardRule, factSpot, valueSpot } from "../rule.ts";
import { inPlaceOf } from "../writing.ts";

const sample = (rating: string) => `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  board A "Main" {
    fed-from supply
    way 1 feeder "Annexe" {
      device  BS EN 60898 C63 6 kA
      feeds   B
    }
  }
  board B "Annexe" {
    fed-from A
    main-switch BS EN 60947-3 ${rating}
    way 1 radial "Kiln" {
      device  BS EN 60898 B32 6 kA
    }
  }
}`;

export default boardRule({
  id: "coordination/switch-below-device",
  severity: "information",
  since: "0.1",
  title: "A main switch rated below the device that protects it.",
  why: "A switch or RCD has no overload protection of its own, and diversity behind it is not accepted as protection. Its rating should be no less than that of the device upstream.",
  clauses: ["536.4.202"],
  examples: [
    { bad: sample("40 A").replace("40 A\n", "40 A\n                              ^^^^\n"), good: sample("63 A") },
  ],
  check({ board, context }, report) {
    const fact = board.head.facts.one("main-switch");
    if (!fact) return;
    const { rating } = fact.args;
    const above = protecting(context);
    if (!above || above.rating <= rating.value) return;
    report(valueSpot(fact, rating), {
      message: `The main switch is rated ${amps(rating.value)}; ${above.name} before it lets ${amps(above.rating)} flow for good. A switch of ${amps(above.rating)} or more, or a smaller device, puts it right.`,
      value: amount(rating.value, "A"),
      limit: amount(above.rating, "A"),
      least: true,
      steps: [
        step(
          "rating of the switch ≥ In upstream",
          `${amps(rating.value)} against ${amps(above.rating)}`,
          "does not hold",
        ),
      ],
      source: { ref: "BS 7671:2018+A2:2022, 536.4.202", standing: "memory" },
      related: [{ spot: factSpot(above.fact), message: "The device upstream." }],
      fixes: [inPlaceOf(rating, amps(above.rating), `Make the switch ${amps(above.rating)}`)],
    });
  },
});
