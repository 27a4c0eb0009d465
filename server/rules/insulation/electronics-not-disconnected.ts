import type { Use } from "../../../grammar/choices.ts";
import { reducedTestVoltage } from "../../calc/insulation.ts";
import { volts } from "../../calc/result.ts";
import { insulationOf } from "../../readings/insulation.ts";
import { wordsAfter } from "../common/writing.ts";
import { amount, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

/** Loads with electronics on their terminals that are usually left in place. */
const delicate: readonly (readonly [use: Use, words: string])[] = [
  ["alarms", "alarms"],
  ["data", "data equipment"],
  ["ev-charger", "a charging point"],
  ["pv", "a photovoltaic generator"],
  ["storage", "a battery"],
  ["control", "controls"],
];

export default wayRule({
  id: "insulation/electronics-not-disconnected",
  severity: "information",
  since: "0.1",
  title: "A circuit with electronics was tested at full voltage, and it is not recorded that they were disconnected.",
  why: "500 V between line and neutral can damage electronics, and connected electronics make the reading false. Unplug or disconnect them first, or join line and neutral and test to earth; and record which.",
  clauses: ["643.3.3"],
  examples: [
    {
      bad: `way 1 radial "Smoke alarms" {
  serves       alarms
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ
                 ^^^^^
  }
}`,
      good: `way 1 radial "Smoke alarms" {
  serves       alarms
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ "Alarms taken off their bases"
  }
}`,
    },
    {
      bad: `way 1 radial "Charging point" {
  serves       ev-charger
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ
                 ^^^^^
  }
}`,
      good: `way 1 radial "Charging point" {
  serves       ev-charger
  dead 2026-03-04 {
    insulation   500 V  L-E 280 MΩ joined
  }
}`,
    },
  ],
  check(study, report) {
    const test = insulationOf(study);
    const serves = study.facts.one("serves");
    const found = delicate.filter(([use]) => study.uses.has(use));
    if (study.isSpare || !test || !serves || found.length === 0 || test.remarked) return;
    const reduced = reducedTestVoltage();
    const fact = test.facts.find(
      (line) =>
        line.args.voltage.value > reduced.value &&
        !line.args.joined &&
        test.values.some((value) => value.fact === line && value.pair === "L-N"),
    );
    if (!fact) return;
    const { voltage } = fact.args;
    report(valueSpot(fact, voltage), {
      message: `Tested at ${volts(voltage.value)} L-N with ${found.map(([, words]) => words).join(" and ")} on the circuit: record the disconnection, or join line and neutral.`,
      value: amount(voltage.value, "V"),
      steps: reduced.steps,
      source: reduced.source,
      related: [{ spot: factSpot(serves), message: "Equipment with electronics on this circuit." }],
      fixes: wordsAfter(fact, '"what was disconnected"', "Record what was disconnected"),
    });
  },
});
