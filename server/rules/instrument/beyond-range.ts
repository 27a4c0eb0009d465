import { exceeds } from "../../calc/compare.ts";
import { megohms, ohms } from "../../calc/result.ts";
import type { Names } from "../../model/installation.ts";
import type { Quantity } from "../../model/values.ts";
import type { MeterTest } from "../../readings/meter-tests.ts";
import { meterTests, supplyMeterTests } from "../../readings/meter-tests.ts";
import { anyStates, type MeterReading, rangeOf, readingsOfTest } from "../../readings/uncertainty.ts";
import { misread } from "../common/writing.ts";
import { amount, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

/** The greatest top of range of the instruments named; nothing where one of them does not state its own. */
function topOf(names: Names, test: MeterTest, { kind }: MeterReading): { name: string; top: Quantity } | undefined {
  let greatest: { name: string; top: Quantity } | undefined;
  for (const name of test.with) {
    const top = rangeOf(names, name, kind);
    if (!top) return undefined;
    if (!greatest || top.value > greatest.top.value) greatest = { name, top };
  }
  return greatest;
}

export default installationRule({
  id: "instrument/beyond-range",
  severity: "warning",
  since: "0.1",
  title: "A reading is above the range of the instrument.",
  why: "The instrument cannot have shown this figure. Off scale is written with > and the top of the range; any other figure is a slip, or was read on another instrument.",
  clauses: ["643.1"],
  examples: [
    {
      setting: { before: 'instrument M1 "Insulation tester" {\n  range  insulation 999 MΩ\n}' },
      bad: `way 1 radial "Outside lights" {
  dead 2026-03-04 with M1 {
    insulation   500 V  L-N 310 MΩ  L-E 2000 MΩ  N-E >999 MΩ
                                        ^^^^^^^
  }
}`,
      good: `way 1 radial "Outside lights" {
  dead 2026-03-04 with M1 {
    insulation   500 V  L-N 310 MΩ  L-E >999 MΩ  N-E 999 MΩ
  }
}`,
    },
  ],
  check(installation, report) {
    checkOne(installation.names, supplyMeterTests(installation), report);
  },
  checkBoard({ context, studies }, report) {
    checkOne(context.names, meterTests(context, studies), report);
  },
});

function checkOne(names: Names, tests: readonly MeterTest[], report: Reporter): void {
  if (!anyStates(names).range) return;
  for (const test of tests) {
    for (const reading of readingsOfTest(test)) {
      const { quantity, fact, kind } = reading;
      // A bound above the range was shown by another instrument, or by none.
      if (quantity.sign === "<") continue;
      const found = topOf(names, test, reading);
      if (!found || !exceeds(quantity.value, found.top.value)) continue;
      const show = kind === "insulation" ? megohms : ohms;
      const top = show(found.top.value);
      report(valueSpot(fact, quantity), {
        message: `${quantity.sign === ">" ? ">" : ""}${show(quantity.value)} is above the range of ${found.name}, ${top}: was it off scale, or read on another instrument?`,
        value: amount(quantity.value, "Ω"),
        limit: amount(found.top.value, "Ω"),
        source: { ref: `The range stated for ${found.name}`, standing: "computed" },
        fixes: [misread(fact, quantity, `>${top}`, "Off scale")],
      });
    }
  }
}
