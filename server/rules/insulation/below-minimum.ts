import { megohms } from "../../calc/result.ts";
import {
  against,
  type InsulationValue,
  insulationLimit,
  insulationOf,
  notReadAgain,
  pairWords,
  sinceWords,
} from "../../readings/insulation.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { relatedFact, shownMegohms } from "../common/dead-words.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { unproven } from "../common/unproven.ts";
import { amount, amountOf, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "insulation/below-minimum",
  severity: "error",
  since: "0.1",
  title: "Insulation resistance is below the minimum.",
  why: "The insulation is damp or damaged, or something was left connected. Disconnect lamps, electronics and surge protective devices, and test again; find the cause of a low reading before the circuit is energised.",
  opens: true,
  clauses: ["643.3", "643.3.1"],
  examples: [
    {
      bad: `way 1 radial "Outside lights" {
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E 0.6 MΩ  N-E 290 MΩ
                                        ^^^^^^
  }
}`,
      good: `way 1 radial "Outside lights" {
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E 120 MΩ  N-E >999 MΩ
  }
}`,
    },
    {
      bad: `way 1 radial "Outside lights" {
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E <1 MΩ  N-E >0.5 MΩ
                                        ^^^^^      ^^^^^^^
  }
}`,
      good: `way 1 radial "Door bell" {
  serves       selv
  dead 2026-03-04 {
    insulation   250 V  L-N 0.8 MΩ  L-E 0.7 MΩ
  }
}`,
    },
  ],
  check(study, report) {
    const test = insulationOf(study);
    const minimum = insulationLimit(study)?.minimum;
    if (study.isSpare || !test || !minimum) return;
    for (const value of [...test.values, ...notReadAgain(study)]) {
      const { fact, quantity } = value;
      const pair = pairWords(value, test);
      const verdict = against(quantity, minimum.value);
      if (value.since !== undefined && verdict !== "fails") continue;
      if (verdict === "passes" || (quantity.value === 0 && quantity.sign === "=")) continue;
      const uncertainty = uncertaintyOnWay(study, fact, quantity);
      const common = {
        value: amount(quantity.value, "Ω"),
        limit: amountOf(minimum),
        least: true,
        sign: quantity.sign,
        steps: [...minimum.steps, ...uncertaintySteps(uncertainty)],
        source: minimum.source,
        related: test.facts
          .filter((other) => other !== fact)
          .map((other) => relatedFact(other, "Another line of the same insulation test.")),
      };
      report(
        valueSpot(fact, quantity),
        verdict === "fails"
          ? {
              ...common,
              message: `${pair} reads ${shownMegohms(quantity)}, below the minimum of ${megohms(minimum.value)}. ${suspicion(pair, quantity.value, test.values, minimum.value)}${withinUncertainty(uncertainty, minimum.value - quantity.value)}${sinceWords(value)}`,
            }
          : {
              ...unproven(`${pair} ${shownMegohms(quantity)}`, `it reaches ${megohms(minimum.value)}`, minimum),
              ...common,
            },
      );
    }
  },
});

function suspicion(pair: string, value: number, values: readonly InsulationValue[], minimum: number): string {
  const others = values.filter((other) => other.pair !== pair);
  const onlyOne = others.length > 0 && others.every(({ quantity }) => against(quantity, minimum) === "passes");
  if (pair === "L-N" && value <= deadTestPractice.loadLeft.value)
    return "A lamp, a neon or a load may be connected: disconnect it and repeat.";
  if (pair === "N-N") return "A neutral is shared with another circuit, or lies in the bar of another RCD.";
  if (pair === "N-E" && onlyOne) return "Look for a neutral touching metal, or one shared with another circuit.";
  return "Disconnect all loads, test in sections, and find the damp or the damage.";
}
