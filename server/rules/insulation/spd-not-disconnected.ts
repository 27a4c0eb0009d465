import { reducedTestVoltage } from "../../calc/insulation.ts";
import { volts } from "../../calc/result.ts";
import { boardInsulation } from "../../readings/insulation.ts";
import { relatedFact } from "../common/dead-words.ts";
import { amount, boardRule, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "insulation/spd-not-disconnected",
  severity: "information",
  since: "0.1",
  title: "A board with an SPD was tested at full voltage, and it is not recorded that the SPD was disconnected.",
  why: "At 500 V a surge protective device conducts: the reading is that of the device and not of the cable, and the device may be damaged. Remove its cartridges or disconnect it, or test at 250 V; and record which.",
  clauses: ["643.3.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
    spd          fitted
    dead 2026-03-04 {
      insulation   500 V  L-E 42 MΩ joined
                   ^^^^^
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
    spd          fitted
    dead 2026-03-04 {
      insulation   500 V  L-E 42 MΩ joined "Surge cartridges pulled"
    }
  }
}`,
    },
  ],
  check({ board, context }, report) {
    const test = boardInsulation(context);
    const spd = board.head.facts.one("spd");
    if (!test || test.remarked || spd?.args.fitted.value !== "fitted") return;
    const reduced = reducedTestVoltage();
    const fact = test.facts.find((line) => line.args.voltage.value > reduced.value);
    if (!fact) return;
    report(valueSpot(fact, fact.args.voltage), {
      message: `Tested at ${volts(fact.args.voltage.value)} with an SPD on the board: record that it was disconnected, or test at ${volts(reduced.value)}.`,
      value: amount(fact.args.voltage.value, "V"),
      steps: reduced.steps,
      source: reduced.source,
      related: [relatedFact(spd, "SPD recorded as fitted.")],
    });
  },
});
