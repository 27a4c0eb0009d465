import { reducedTestVoltage } from "../../calc/insulation.ts";
import { volts } from "../../calc/result.ts";
import { insulationKind, insulationLimit, insulationOf } from "../../readings/insulation.ts";
import { misread, wordsAfter } from "../common/writing.ts";
import { amount, amountOf, type Report, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "insulation/test-voltage",
  severity: "warning",
  since: "0.1",
  title: "An insulation test was made at the wrong voltage.",
  why: "Weak insulation shows only at the voltage the table requires. 250 V is for extra-low voltage, and for circuits with equipment or surge protective devices that cannot be disconnected: then record why.",
  clauses: ["643.3.1", "643.3.2", "643.3.3"],
  examples: [
    {
      bad: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation   250 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ
                 ^^^^^
  }
}`,
      good: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation   250 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ "Drivers of fixed luminaires cannot be disconnected"
  }
}`,
    },
    {
      bad: `way 1 radial "Door bell" {
  serves       selv
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ
                 ^^^^^
  }
}`,
      good: `way 1 radial "Door bell" {
  serves       selv
  dead 2026-03-04 {
    insulation   250 V  L-N 310 MΩ
  }
}`,
    },
    {
      bad: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation   100 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ "Battery low"
                 ^^^^^
  }
}`,
      good: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ
  }
}`,
    },
  ],
  check(study, report) {
    const test = insulationOf(study);
    const limit = insulationLimit(study)?.testVoltage;
    if (study.isSpare || !test || !limit) return;
    const selv = insulationKind(study) === "selv-pelv";
    const reduced = reducedTestVoltage();
    for (const fact of test.facts) {
      const { voltage } = fact.args;
      if (voltage.value === limit.value || (voltage.value > limit.value && test.remarked)) continue;
      const common: Omit<Report, "message"> = {
        value: amount(voltage.value, "V"),
        limit: amountOf(limit),
        least: true,
        steps: limit.steps,
        source: limit.source,
        fixes: [
          ...(test.remarked ? [] : wordsAfter(fact, '"…"', "Record why it was tested at this voltage")),
          misread(
            fact,
            voltage,
            volts(limit.value),
            "Test voltage written wrongly",
            `I wrote it wrongly: it was tested at ${volts(limit.value)}`,
          ),
        ],
      };
      const spot = valueSpot(fact, voltage);
      if (voltage.value > limit.value) {
        const message = selv
          ? `Extra-low voltage is tested at ${volts(limit.value)}, not ${volts(voltage.value)}: was the right row of the table used?`
          : `${volts(voltage.value)} is above the test voltage of ${volts(limit.value)} and can damage what is connected: record why.`;
        report(spot, { ...common, least: false, message, severity: "information" });
      } else if (voltage.value < reduced.value || selv) {
        report(spot, {
          ...common,
          message: `${volts(voltage.value)} proves nothing about this circuit's insulation: test it at ${volts(limit.value)}.`,
        });
      } else if (!test.remarked) {
        report(spot, {
          ...common,
          message: `Tested at ${volts(voltage.value)} where ${volts(limit.value)} is required: repeat it at ${volts(limit.value)}, or record why not.`,
          steps: [...limit.steps, ...reduced.steps],
        });
      }
    }
  },
});
