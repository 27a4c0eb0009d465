import { reducedTestVoltage } from "../../calc/insulation.ts";
import { volts } from "../../calc/result.ts";
import { insulationKind, insulationLimit, insulationOf } from "../../readings/insulation.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, type Report, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "insulation/test-voltage",
  severity: "warning",
  since: "0.1",
  title: "An insulation test at a voltage that is not this circuit's, or at a reduced one without a reason.",
  why: "Weak insulation shows itself only at the voltage the table asks for. 250 V serves extra-low voltage, and circuits with equipment or surge devices that cannot be disconnected: then the line says so.",
  clauses: ["643.3.1", "643.3.2", "643.3.3"],
  examples: [
    {
      bad: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation  250 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ
                ^^^^^
  }
}`,
      good: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation  250 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ  "Drivers of fixed luminaires cannot be disconnected"
  }
}`,
    },
    {
      bad: `way 1 radial "Door bell" {
  serves  selv
  dead 2026-03-04 {
    insulation  500 V  L-N 310 MΩ
                ^^^^^
  }
}`,
      good: `way 1 radial "Door bell" {
  serves  selv
  dead 2026-03-04 {
    insulation  250 V  L-N 310 MΩ
  }
}`,
    },
    {
      bad: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation  100 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ  "Battery low"
                ^^^^^
  }
}`,
      good: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation  500 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ
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
        fixes: [inPlaceOf(voltage, volts(limit.value), `Write ${volts(limit.value)}`)],
      };
      const spot = valueSpot(fact, voltage);
      if (voltage.value > limit.value) {
        const message = selv
          ? `Extra-low voltage is tested at ${volts(limit.value)}, not ${volts(voltage.value)}: was the right row of the table used?`
          : `${volts(voltage.value)} is more than the ${volts(limit.value)} of this circuit, and can harm what is connected. Say why.`;
        report(spot, { ...common, least: false, message, severity: "information" });
      } else if (voltage.value < reduced.value || selv) {
        report(spot, {
          ...common,
          message: `${volts(voltage.value)} shows nothing of this circuit's insulation: test it at ${volts(limit.value)}.`,
        });
      } else if (!test.remarked) {
        report(spot, {
          ...common,
          message: `Tested at ${volts(voltage.value)} where ${volts(limit.value)} is asked for: say why, or repeat it at ${volts(limit.value)}.`,
          steps: [...limit.steps, ...reduced.steps],
        });
      }
    }
  },
});
