import { fallsShort } from "../../calc/compare.ts";
import { milliamps, volts } from "../../calc/result.ts";
import { continuityTestCurrent } from "../../calc/uncertainty.ts";
import { allWrittenAt } from "../../model/fact-values.ts";
import type { Names } from "../../model/installation.ts";
import type { FactOf, Facts } from "../../model/values.ts";
import { factsOf } from "../../readings/instruments.ts";
import { insulationLines } from "../../readings/insulation.ts";
import type { MeterTest } from "../../readings/meter-tests.ts";
import { meterTests, supplyMeterTests } from "../../readings/meter-tests.ts";
import { readingsOfTest } from "../../readings/uncertainty.ts";
import { sameTests } from "../common/instrument-words.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter, type Spot, valueSpot } from "../frame/rule.ts";

/** What is known of each instrument of a test; nothing where one that is named is not described. */
function described(names: Names, test: MeterTest): { name: string; facts: Facts<"instrument"> }[] {
  const found = test.with.flatMap((name) => {
    const instrument = names.instruments.get(name)?.[0];
    const facts = instrument && factsOf(instrument);
    return facts ? [{ name, facts }] : [];
  });
  return found.length === test.with.length ? found : [];
}

/** Where a test names its first instrument. */
function namedSpot({ header }: MeterTest): Spot {
  const [first] = allWrittenAt(header, "with");
  return first ? valueSpot(header, first) : factSpot(header);
}

interface Weak {
  readonly name: string;
  readonly fact: FactOf<"instrument", "test-current">;
  readonly test: MeterTest;
}

/** Where several instruments are named, any that can, or may, do the test will have done it. */
function weakIn(names: Names, test: MeterTest, least: number): Weak[] {
  const stated = described(names, test).map(({ name, facts }) => ({ name, fact: facts.one("test-current") }));
  const [first] = stated;
  if (!first?.fact || !stated.every(({ fact }) => fact && fallsShort(fact.args.value.value, least))) return [];
  // Hardly an instrument is so weak: what was read with it is looked at last.
  const reads = readingsOfTest(test).some(({ kind }) => kind === "continuity");
  return reads ? [{ name: first.name, fact: first.fact, test }] : [];
}

/** What an instrument cannot do is reported once, with all it was used for. */
function weakCurrent(names: Names, tests: readonly MeterTest[], report: Reporter): void {
  const least = continuityTestCurrent();
  const groups = Map.groupBy(
    tests.flatMap((test) => weakIn(names, test, least.value)),
    ({ name }) => name,
  );
  for (const [first, ...others] of groups.values()) {
    if (!first) continue;
    const { name, fact, test } = first;
    const { value } = fact.args.value;
    report(namedSpot(test), {
      message: `${name} tests continuity with ${milliamps(value)}, below the required ${milliamps(least.value)}: repeat these continuity tests${sameTests(others)} with another instrument.`,
      value: amount(value, "A"),
      limit: amountOf(least),
      least: true,
      steps: least.steps,
      source: least.source,
      related: [
        { spot: factSpot(fact), message: `Test current of ${name}: ${milliamps(value)}.` },
        ...others.map((other) => ({ spot: namedSpot(other.test), message: `${name} is used for this test as well.` })),
      ],
    });
  }
}

function voltageNotGiven(names: Names, test: MeterTest, report: Reporter): void {
  const stated = described(names, test).map(({ name, facts }) => ({ name, fact: facts.one("test-voltage") }));
  const [first] = stated;
  if (!first?.fact) return;
  for (const line of insulationLines(test.facts)) {
    const { voltage } = line.args;
    const gives = (fact: FactOf<"instrument", "test-voltage"> | undefined): boolean =>
      !fact || fact.args.values.some(({ value }) => value === voltage.value);
    if (line.provenance !== "measured" || stated.some(({ fact }) => gives(fact))) continue;
    const list = first.fact.args.values.map(({ value }) => volts(value)).join(", ");
    report(valueSpot(line, voltage), {
      message: `${first.name} tests at ${list}, not at ${volts(voltage.value)}: was it another instrument, or another voltage?`,
      related: [{ spot: factSpot(first.fact), message: `Test voltages of ${first.name}: ${list}.` }],
    });
  }
}

export default installationRule({
  id: "instrument/not-capable",
  severity: "warning",
  since: "0.1",
  title: "The instrument named cannot make this test.",
  why: "A small test current does not show a joint that fails under load, and insulation is judged at the voltage the table requires. Name the instrument that was used, or repeat the test with one that can make it.",
  clauses: ["643.1", "643.2.1", "643.3.1"],
  examples: [
    {
      setting: { before: 'instrument M1 "Multimeter" {\n  test-current  7 mA\n}' },
      bad: `way 1 radial "Oven" {
  dead 2026-03-04 with M1 {
                       ^^
    R1+R2        0.41 Ω
  }
}`,
      good: `way 1 radial "Oven" {
  dead 2026-03-04 with M1 {
    polarity     ok
  }
}`,
    },
    {
      setting: { before: 'instrument M1 "Insulation tester" {\n  test-voltage  250 V 500 V\n}' },
      bad: `way 1 radial "Oven" {
  dead 2026-03-04 with M1 {
    insulation   1000 V  L-N 310 MΩ
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Oven" {
  dead 2026-03-04 with M1 {
    insulation   500 V  L-N 310 MΩ
  }
}`,
    },
  ],
  check(installation, report) {
    weakCurrent(installation.names, supplyMeterTests(installation), report);
  },
  checkBoard({ context, studies }, report) {
    const tests = meterTests(context, studies);
    weakCurrent(context.names, tests, report);
    for (const test of tests) voltageNotGiven(context.names, test, report);
  },
});
