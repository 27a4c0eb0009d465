/** What a reading may be out by, from what is stated of the instrument it was taken with. */

import type { MeasuredKind } from "../../grammar/quantities.ts";
import { readArgs } from "../../grammar/readings.ts";
import { unitOf } from "../../grammar/units.ts";
import { type BlockKind, rowOf } from "../../grammar/vocabulary.ts";
import { type ReadingUncertainty, readingUncertainty, type Shown, type StatedAccuracy } from "../calc/uncertainty.ts";
import type { WayStudy } from "../circuit/way.ts";
import { valueAt } from "../model/fact-values.ts";
import type { Context, Names } from "../model/installation.ts";
import { type AnyValue, type Fact, type Facts, isAbsent, type Quantity } from "../model/values.ts";
import { factsOf } from "./instruments.ts";
import { deadOfBoard, type MeterTest, supplyTests } from "./meter-tests.ts";
import { liveOfBoard } from "./rcd-tests.ts";

/** A figure read on an instrument. */
export interface MeterReading {
  readonly kind: MeasuredKind;
  readonly fact: Fact;
  readonly quantity: Quantity;
}

export interface Uncertainty extends ReadingUncertainty {
  readonly instrument: string;
}

const units: Readonly<Record<MeasuredKind, Shown["unit"]>> = {
  continuity: "Ω",
  insulation: "Ω",
  loop: "Ω",
  electrode: "Ω",
  "rcd-time": "s",
  "trip-current": "A",
  fault: "A",
  leakage: "A",
  voltage: "V",
};

const isQuantity = (value: AnyValue | undefined): value is Quantity =>
  value !== undefined && !isAbsent(value) && "sign" in value;

/** The figures of a line that were read on an instrument; what was worked out or copied has no uncertainty of its own. */
export function readingsIn(block: BlockKind, fact: Fact): MeterReading[] {
  const row = rowOf(block, fact.word);
  if (!row || fact.provenance !== "measured") return [];
  return readArgs(row).flatMap(({ name, meter: kind }) => {
    const quantity = valueAt(fact, name);
    return kind && isQuantity(quantity) ? [{ kind, fact, quantity }] : [];
  });
}

export const readingsOfTest = ({ facts }: MeterTest): MeterReading[] =>
  facts.list.flatMap((fact) => readingsIn(facts.kind, fact));

/** Whether any instrument states its accuracy, or its range: where none does, no reading has an uncertainty or a top. */
export const anyStates = (names: Names) => names.answer(whatIsStated);

function whatIsStated(names: Names) {
  const all = [...names.instruments.values()].flat().map(factsOf);
  const states = (word: "accuracy" | "range") => all.some((facts) => facts?.has(word));
  return { accuracy: states("accuracy"), range: states("range") };
}

/** What is stated of an instrument's accuracy for one kind of measurement. */
export function accuracyOf(names: Names, instrument: string, kind: MeasuredKind): StatedAccuracy | undefined {
  const found = names.instruments.get(instrument)?.[0];
  const stated = (found && factsOf(found)?.all("accuracy")) ?? [];
  const of = (wanted: MeasuredKind) => stated.find(({ args }) => args.of.value === wanted);
  // An electrode is usually read on the loop range.
  const fact = of(kind) ?? (kind === "electrode" ? of("loop") : undefined);
  return fact && { percent: fact.args.share.value, digits: fact.args.count?.value ?? 0 };
}

/** The top of an instrument's range, Ω. */
export function rangeOf(names: Names, instrument: string, kind: MeasuredKind): Quantity | undefined {
  const found = names.instruments.get(instrument)?.[0];
  const fact =
    found &&
    factsOf(found)
      ?.all("range")
      .find(({ args }) => args.of.value === kind);
  return fact?.args.top;
}

/** One step of the last figure as it was written, in the base unit. */
const lastFigure = ({ unit, decimals }: Quantity): number => 10 ** -decimals * (unitOf(unit)?.factor ?? 1);

/**
 * The uncertainty of a reading. Where a block names several instruments it is the greatest that is stated: which of them was
 * used is not known.
 */
export function uncertaintyOf(
  names: Names,
  instruments: readonly string[],
  kind: MeasuredKind,
  quantity: Quantity,
): Uncertainty | undefined {
  if (quantity.sign !== "=") return undefined;
  const shown = { value: quantity.value, step: lastFigure(quantity), unit: units[kind] } as const;
  let greatest: Uncertainty | undefined;
  for (const instrument of instruments) {
    const accuracy = accuracyOf(names, instrument, kind);
    const own = accuracy && readingUncertainty(shown, accuracy, instrument);
    const uncertainty = own && { ...own, steps: own.steps, instrument };
    if (uncertainty && uncertainty.value > (greatest?.value ?? 0)) greatest = uncertainty;
  }
  return greatest;
}

/** How far a reading may be out, in its own unit; nothing where no instrument states it. */
export const uncertaintyIn = ({ uncertainty }: { readonly uncertainty?: Uncertainty | undefined }): number =>
  uncertainty?.value ?? 0;

/** The uncertainty of a reading that stands in one of a way's blocks of tests. */
export function uncertaintyOnWay(study: WayStudy, fact: Fact, quantity: Quantity): Uncertainty | undefined {
  for (const test of [...study.deadTests, ...study.liveTests]) {
    if (test.facts.list.includes(fact)) return uncertaintyInTest(study.context.names, test, fact, quantity);
  }
  return undefined;
}

/** The uncertainty of a reading of the supply, or of a board, in whichever of its tests it stands. */
export function uncertaintyOnBoard(context: Context, fact: Fact, quantity: Quantity): Uncertainty | undefined {
  const tests = [...deadOfBoard(context), ...liveOfBoard(context), ...supplyTests(context.supply)];
  return uncertaintyAmong(context.names, tests, fact, quantity);
}

export const uncertaintyOnSupply = (
  { supply, names }: Pick<Context, "supply" | "names">,
  fact: Fact,
  quantity: Quantity,
): Uncertainty | undefined => uncertaintyAmong(names, supplyTests(supply), fact, quantity);

/** The uncertainty of a reading in whichever of several tests it stands. */
export function uncertaintyAmong(
  names: Names,
  tests: readonly MeterTest[],
  fact: Fact,
  quantity: Quantity,
): Uncertainty | undefined {
  const test = tests.find(({ facts }) => facts?.list.includes(fact));
  return test && uncertaintyInTest(names, test, fact, quantity);
}

/** The uncertainty of a reading in the block it stands in. */
export function uncertaintyInTest(
  names: Names,
  test: Pick<MeterTest, "with"> & { readonly facts: Pick<Facts, "kind"> },
  fact: Fact,
  quantity: Quantity,
): Uncertainty | undefined {
  const kind = readingsIn(test.facts.kind, fact).find((one) => one.quantity === quantity)?.kind;
  return kind && uncertaintyOf(names, test.with, kind, quantity);
}
