import type { InsulationValue } from "../../readings/insulation.ts";
import { insulationOf } from "../../readings/insulation.ts";
import { relatedFact, shownMegohms } from "../common/dead-words.ts";
import { boardRule, valueSpot } from "../frame/rule.ts";

const board = (second: string, mark: string) => `wayfile 1
instrument M1 "Multifunction tester"
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
    way 1 radial "Lights" {
      dead 2026-03-04 with M1 {
        insulation   500 V  L-N >999 MΩ  L-E >999 MΩ  N-E >999 MΩ
      }
    }
    way 2 radial "Heater" {
      dead 2026-03-04 with M1 {
        insulation   500 V  L-N >999 MΩ  L-E ${second}  N-E >999 MΩ
${mark}      }
    }
  }
}
`;

export default boardRule({
  id: "insulation/differing-ranges",
  severity: "information",
  since: "0.1",
  title: "One instrument is off scale at two different figures.",
  why: "At one test voltage an instrument has one top of range. Two figures mean two instruments, or a range that was guessed: the record names the wrong instrument or the wrong figure.",
  clauses: [],
  examples: [
    { bad: board(">200 MΩ", "                                             ^^^^^^^\n"), good: board("200 MΩ", "") },
  ],
  check({ studies }, report) {
    const seen = new Map<string, InsulationValue>();
    const told = new Set<string>();
    for (const study of studies) {
      const test = insulationOf(study);
      const [instrument] = test?.with ?? [];
      if (!test || instrument === undefined || test.with.length !== 1) continue;
      for (const value of test.values) {
        if (value.quantity.sign !== ">") continue;
        const key = `${instrument} ${value.fact.args.voltage.value}`;
        const before = seen.get(key);
        if (!before) seen.set(key, value);
        if (!before || before.quantity.value === value.quantity.value || told.has(key)) continue;
        told.add(key);
        report(valueSpot(value.fact, value.quantity), {
          message: `${instrument} is off scale at ${shownMegohms(value.quantity)} here and at ${shownMegohms(before.quantity)} elsewhere, at the same voltage: is it one instrument?`,
          related: [relatedFact(before.fact, `${instrument} off scale at ${shownMegohms(before.quantity)}.`)],
        });
      }
    }
  },
});
