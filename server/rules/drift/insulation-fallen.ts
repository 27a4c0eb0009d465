import { readArgs } from "../../../grammar/readings.ts";
import { ageingOf } from "../../../grammar/traits.ts";
import { type BlockKind, rowOf } from "../../../grammar/vocabulary.ts";
import { fallsShort } from "../../calc/compare.ts";
import { megohms } from "../../calc/result.ts";
import type { Names } from "../../model/installation.ts";
import { type Fact, isAbsent, type Quantity, quantityOf, readingAt } from "../../model/values.ts";
import { deadOfBoard } from "../../readings/meter-tests.ts";
import type { DatedTest } from "../../readings/series.ts";
import { type Uncertainty, uncertaintyIn, uncertaintyInTest } from "../../readings/uncertainty.ts";
import { comparison } from "../../tables/comparison.ts";
import { shownMegohms } from "../common/dead-words.ts";
import { driftUncertainty } from "../common/uncertainty-words.ts";
import { amount, boardRule, type Reporter, valueSpot } from "../frame/rule.ts";

interface PairRead {
  readonly pair: string;
  readonly voltage: number | undefined;
  readonly quantity: Quantity;
  readonly fact: Fact;
  readonly on: string;
  readonly uncertainty: Uncertainty | undefined;
}

/** The pairs of conductors that a line can hold, where insulation is what it reads. */
function argsOf(block: BlockKind, word: string): string[] {
  const row = rowOf(block, word);
  return row && ageingOf(row) === "insulation" ? readArgs(row).map(({ name }) => name) : [];
}

/** What was read between each pair of conductors in a test. */
function pairsIn(names: Names, test: DatedTest): PairRead[] {
  return (test.facts?.list ?? []).flatMap((fact) =>
    argsOf(test.facts.kind, fact.word).flatMap((pair): PairRead[] => {
      const reading = readingAt(fact, pair);
      if (!reading || isAbsent(reading)) return [];
      const voltage = quantityOf(readingAt(fact, "voltage"))?.value;
      const uncertainty = uncertaintyInTest(names, test, fact, reading);
      return [{ pair, voltage, quantity: reading, fact, on: test.on, uncertainty }];
    }),
  );
}

/** Whether the later reading is surely below the share of the earlier, uncertainties and all: a bound above leaves it open. */
function fallen(now: PairRead, then: PairRead): boolean {
  if (now.quantity.sign === ">" || then.quantity.sign === "<") return false;
  const [most, least] = [now.quantity.value + uncertaintyIn(now), then.quantity.value - uncertaintyIn(then)];
  return fallsShort(most, least * comparison.insulationLeft.value);
}

/**
 * Insulation reads no less at a lower voltage, so what fell at one fell all the more. But live conductors joined and tested
 * at a lower voltage are the test with equipment connected, which reads less by nature.
 */
const isComparable = (then: PairRead, now: PairRead): boolean =>
  then.voltage === now.voltage ||
  (then.voltage !== undefined && now.voltage !== undefined && now.voltage < then.voltage && !now.fact.args.joined);

function checkOne(names: Names, tests: readonly DatedTest[], of: string, report: Reporter): void {
  if (tests.length < 2) return;
  const all = tests.map((test) => pairsIn(names, test));
  const told = new Set<string>();
  for (const now of all.flat()) {
    const key = `${now.pair} ${now.voltage}`;
    if (told.has(key)) continue;
    told.add(key);
    const then = all.flat().find((then) => then.pair === now.pair && then.on < now.on && isComparable(then, now));
    if (!then || !fallen(now, then)) continue;
    const before = then.quantity.value;
    report(valueSpot(now.fact, now.quantity), {
      message: `${now.pair}${of} fell from ${then.quantity.sign === ">" ? "over " : ""}${megohms(before)} on ${then.on} to ${megohms(now.quantity.value)}: look for damp, heat, or something newly connected.`,
      value: amount(now.quantity.value, "Ω"),
      limit: amount(before * comparison.insulationLeft.value, "Ω"),
      least: true,
      steps: driftUncertainty(now, then),
      source: comparison.insulationLeft.source,
      related: [
        {
          spot: valueSpot(then.fact, then.quantity),
          message: `${now.pair} on ${then.on}: ${shownMegohms(then.quantity)}.`,
        },
      ],
    });
  }
}

export default boardRule({
  id: "drift/insulation-fallen",
  severity: "warning",
  since: "0.1",
  title: "An insulation resistance has fallen far since the previous test.",
  why: "It may still pass, but something has changed: damp, heat, or a damaged cable. Find it now, before it becomes a fault.",
  opens: true,
  clauses: ["643.3", "651.2"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `way 1 radial "Yard lights" {
  dead 2021-03-04 {
    insulation   500 V  L-E >999 MΩ
  }
  dead 2026-03-04 {
    insulation   500 V  L-E 12 MΩ
                            ^^^^^
  }
}`,
      good: `way 1 radial "Yard lights" {
  dead 2021-03-04 {
    insulation   500 V  L-E >999 MΩ
  }
  dead 2026-03-04 {
    insulation   500 V  L-E 310 MΩ
  }
}`,
    },
  ],
  check({ board, context, studies }, report) {
    checkOne(context.names, deadOfBoard(context), ` of board ${board.head.name}`, report);
    for (const { deadTests } of studies) checkOne(context.names, deadTests, "", report);
  },
});
