import { nextRatingUp, ratings } from "../../calc/minimum-size.ts";
import { amps } from "../../calc/result.ts";
import { breakerLoop } from "../../tables/loop-breakers.ts";
import { standardRatings } from "../../tables/standard-values.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { inPlaceOf, slipOf } from "../common/writing.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/device-rating-unusual",
  severity: "warning",
  since: "0.1",
  title: "A rated current is not a standard one for this kind of device.",
  why: "A wrong digit here shifts every limit of the circuit. Read the rating off the device again.",
  clauses: [],
  examples: [
    {
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 B23 6 kA
                           ^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B25 6 kA
}`,
    },
  ],
  check(study, report) {
    const { device } = study;
    if (!device?.family || device.rating === undefined) return;
    const { family, rating } = device;
    if (ratings(family).includes(rating)) return;
    // The loop table prints a few ratings that exist though they are not preferred.
    if (family === "breaker" && breakerLoop.rows.some(({ facts }) => facts.rating === rating)) return;
    const { curve, rating: amperes } = device.fact.args;
    const spot = curve ?? amperes;
    const row = rowOf(standardRatings, { family });
    if (!spot || !row) return;
    const next = nextRatingUp(family, rating);
    report(valueSpot(device.fact, spot), {
      message: `${amps(rating)} is not a standard rating for a ${device.standard} device: read it off the device again.`,
      value: amount(rating, "A"),
      source: sourceOf(standardRatings, row, "rating"),
      fixes: next && curve ? [slipOf(inPlaceOf(curve, `${curve.curve}${next}`, `Make it ${curve.curve}${next}`))] : [],
    });
  },
});
