import { insulationRule } from "../../calc/insulation.ts";
import { megohms } from "../../calc/result.ts";
import { against, boardInsulation } from "../../readings/insulation.ts";
import { uncertaintyOnBoard } from "../../readings/uncertainty.ts";
import { relatedFact, shownMegohms } from "../common/dead-words.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { unproven } from "../common/unproven.ts";
import { amount, amountOf, boardRule, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "insulation/board-below-minimum",
  severity: "error",
  since: "0.1",
  title: "Insulation resistance of a board as a whole is below the minimum.",
  why: "With all circuits connected the board must still reach the minimum of one circuit. With the board isolated, disconnect its circuits one by one until the reading rises: the last one disconnected is the poor one. If all are fair and only their number brings it down, test and record the board in groups.",
  opens: true,
  clauses: ["643.3", "643.3.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
    dead 2026-03-04 {
      insulation   500 V  L-E 0.4 MΩ joined
                              ^^^^^^
    }
    way 1 radial "Lights"
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
    dead 2026-03-04 {
      insulation   500 V  L-E 42 MΩ joined
    }
    way 1 radial "Lights"
  }
}`,
    },
  ],
  check({ board, context, studies }, report) {
    const test = boardInsulation(context);
    if (!test || !context.edition) return;
    const { minimum } = insulationRule("up-to-500", context.edition);
    for (const { pair, fact, quantity } of test.values) {
      const verdict = against(quantity, minimum.value);
      if (verdict === "passes") continue;
      if (verdict !== "fails") {
        const what = `board ${board.head.name} reaches ${megohms(minimum.value)}`;
        report(valueSpot(fact, quantity), {
          ...unproven(`${pair} ${shownMegohms(quantity)}`, what, minimum),
          least: true,
        });
        continue;
      }
      const meter = uncertaintyOnBoard(context, fact, quantity);
      report(valueSpot(fact, quantity), {
        message: `Board ${board.head.name} reads ${shownMegohms(quantity)} ${pair} as a whole, below the minimum of ${megohms(minimum.value)}: disconnect its circuits one by one to find the poor one.${withinUncertainty(meter, minimum.value - quantity.value)}`,
        value: amount(quantity.value, "Ω"),
        limit: amountOf(minimum),
        least: true,
        steps: [...minimum.steps, ...uncertaintySteps(meter)],
        source: minimum.source,
        related: studies.slice(0, 3).map(({ way }) => relatedFact(way.header, `Way ${way.id} of this board.`)),
      });
    }
  },
});
