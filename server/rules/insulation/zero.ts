import { insulationLimit, insulationOf, notReadAgain, pairWords, sinceWords } from "../../readings/insulation.ts";
import { amount, amountOf, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "insulation/zero",
  severity: "error",
  since: "0.1",
  title: "Insulation resistance is recorded as zero: a short circuit.",
  why: "Zero is a short circuit between the two conductors. If the meter was off scale, the insulation is good and the opposite was meant: write > and the top of the range.",
  opens: true,
  clauses: ["643.3", "643.3.1"],
  examples: [
    {
      bad: `way 1 radial "Heater" {
  dead 2026-03-04 {
    insulation   500 V  L-N 0 MΩ  L-E 0.00 MΩ  N-E >999 MΩ
                            ^^^^      ^^^^^^^
  }
}`,
      good: `way 1 radial "Heater" {
  dead 2026-03-04 {
    insulation   500 V  L-N >999 MΩ  L-E >999 MΩ  N-E >999 MΩ
  }
}`,
    },
  ],
  check(study, report) {
    const test = insulationOf(study);
    if (study.isSpare || !test) return;
    const minimum = insulationLimit(study)?.minimum;
    for (const value of [...test.values, ...notReadAgain(study)]) {
      const { fact, quantity } = value;
      if (quantity.value !== 0 || quantity.sign !== "=") continue;
      report(valueSpot(fact, quantity), {
        message: `${pairWords(value, test)} reads 0, a short circuit: find it; or, if the meter was off scale, write > and the top of the range, such as >999 MΩ.${sinceWords(value)}`,
        value: amount(0, "Ω"),
        least: true,
        ...(minimum ? { limit: amountOf(minimum), steps: minimum.steps, source: minimum.source } : {}),
      });
    }
  },
});
