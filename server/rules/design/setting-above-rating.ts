import { exceeds } from "../../calc/compare.ts";
import { amps } from "../../calc/result.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/setting-above-rating",
  severity: "error",
  since: "0.1",
  title: "A breaker is set above its rated current.",
  why: "An overload release is set to the rated current at most. A setting above it cannot be made, so one of the two figures is wrong, and the cable is judged by it.",
  clauses: ["433.1.1", "512.1.2"],
  examples: [
    {
      bad: `way 1 feeder "Annexe" {
  device       BS EN 60947-2 100 A 36 kA
  settings     thermal 125 A  instantaneous 1 kA
                       ^^^^^
}`,
      good: `way 1 feeder "Annexe" {
  device       BS EN 60947-2 160 A 36 kA
  settings     thermal 125 A  instantaneous 1 kA
}`,
    },
  ],
  check({ device, facts }, report) {
    const settings = facts.one("settings");
    if (!settings) return;
    const { thermal } = settings.args;
    const rating = device?.fact.args.rating;
    if (!thermal || !rating || !exceeds(thermal.value, rating.value)) return;
    report(valueSpot(settings, thermal), {
      message: `The overload release is set to ${amps(thermal.value, rating.value)}, above the ${amps(rating.value, thermal.value)} of the breaker.`,
      value: amount(thermal.value, "A"),
      limit: amount(rating.value, "A"),
      source: { ref: "BS EN 60947-2, a setting is at most the rated current", standing: "practice" },
    });
  },
});
