/** One reading on all the days it was taken, the latest first: what drift is judged by. */

import type { WordRow } from "../../grammar/params.ts";
import { meterOf, readArgs } from "../../grammar/readings.ts";
import { type Ageing, ageingOf } from "../../grammar/traits.ts";
import { rowOf } from "../../grammar/vocabulary.ts";
import { atTemperature } from "../calc/conductor-resistance.ts";
import { memoOfPlaces } from "../circuit/kept.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Context, Installation, Names } from "../model/installation.ts";
import { type Fact, innerOf, isAbsent, type Quantity, quantityOf, readingAt } from "../model/values.ts";
import { inOrder } from "../text/order.ts";
import type { MeterTest } from "./meter-tests.ts";
import { deadOfBoard, supplyTests } from "./meter-tests.ts";
import { liveOfBoard } from "./rcd-tests.ts";
import { keyText, readingName } from "./reading-name.ts";
import { type Uncertainty, uncertaintyInTest } from "./uncertainty.ts";

export interface Taken {
  readonly on: string;
  readonly fact: Fact;
  readonly quantity: Quantity;
  /** In the base unit; a conductor's resistance at 20 °C where its temperature was noted. */
  readonly value: number;
  readonly uncertainty: Uncertainty | undefined;
}

export interface Series {
  readonly name: string;
  readonly ageing: Ageing;
  readonly figures: WordRow["figures"];
  readonly now: Taken;
  /** Earlier readings, the latest first; never none. */
  readonly before: readonly Taken[];
}

export type DatedTest = MeterTest & { readonly on: string };

/** A reading as it is found again on another day. */
interface Slot {
  readonly row: WordRow;
  readonly fact: Fact;
  readonly arg: string;
}

/** Everything that is read on a meter in some tests and ages in one of these ways, each once. */
function slotsIn(tests: readonly DatedTest[], ageings: readonly Ageing[]): Slot[] {
  const found = new Map<string, Slot>();
  for (const { facts } of tests) {
    for (const fact of facts?.list ?? []) {
      const row = rowOf(facts.kind, fact.word);
      if (!row || !ageings.includes(ageingOf(row))) continue;
      for (const { name: arg, meter } of readArgs(row)) {
        if (meter === undefined || fact.args[arg] === undefined) continue;
        const key = [fact.word, keyText(row.reads?.key ?? [], fact), arg].join(" ");
        if (!found.has(key)) found.set(key, { row, fact, arg });
      }
    }
  }
  return [...found.values()];
}

/**
 * What stands now and what was read before. Nothing where the last word on it was not understood, was no reading, or
 * went off scale: there is nothing to hold against the earlier days then.
 */
function seriesOf(
  names: Names,
  tests: readonly DatedTest[],
  { row, fact: { word }, fact, arg }: Slot,
): Series | undefined {
  const keys = row.reads?.key ?? [];
  const key = keyText(keys, fact);
  const taken: Taken[] = [];
  for (const test of tests) {
    if (!test.facts) continue;
    if (test.facts.broken.includes(word)) break;
    const found = test.facts.list.find(
      (one) => one.word === word && one.args[arg] !== undefined && keyText(keys, one) === key,
    );
    const reading = readingAt(found, arg);
    if (!found || !reading) continue;
    const usable = !isAbsent(reading) && reading.sign === "=" && found.provenance === "measured";
    if (usable) taken.push(takenIn(names, test, found, reading));
    else if (taken.length === 0) break;
  }
  const [now, ...before] = taken;
  if (!now || before.length === 0) return undefined;
  return { name: readingName(row, fact, arg), ageing: ageingOf(row), figures: row.figures, now, before };
}

function takenIn(names: Names, test: DatedTest, fact: Fact, quantity: Quantity): Taken {
  const noted = quantityOf(readingAt(test.facts.list.find(({ word }) => word === "temperature")));
  const meter = meterOf(test.facts.kind, fact.word, argOf(fact, quantity));
  const factor = meter === "continuity" && noted ? atTemperature(1, noted.value).value : 1;
  const uncertainty = uncertaintyInTest(names, test, fact, quantity);
  return { on: test.on, fact, quantity, value: quantity.value / factor, uncertainty };
}

const argOf = (fact: Fact, quantity: Quantity): string =>
  Object.keys(fact.args).find((name) => fact.args[name] === quantity) ?? "";

/** The readings of some tests, the latest first, that were taken on more than one day and age in one of these ways. */
const seriesIn = (names: Names, tests: readonly DatedTest[], ageings: readonly Ageing[]): Series[] =>
  tests.length < 2 ? [] : slotsIn(tests, ageings).flatMap((slot) => seriesOf(names, tests, slot) ?? []);

export const seriesOfWay = (study: WayStudy, ageings: readonly Ageing[]): Series[] => [
  ...seriesIn(study.context.names, study.liveTests, ageings),
  ...deadSeriesOfWay(study, ageings),
];

export const deadSeriesOfWay = ({ deadTests, context }: WayStudy, ageings: readonly Ageing[]): Series[] =>
  seriesIn(context.names, deadTests, ageings);

export const seriesOfBoard = (context: Context, ageings: readonly Ageing[]): Series[] =>
  [liveOfBoard(context), deadOfBoard(context)].flatMap((tests) => seriesIn(context.names, tests, ageings));

const daysOfSupply = ({ head }: Installation): DatedTest[] => supplyTests(innerOf(head.facts.one("supply"), "supply"));

export const seriesOfSupply = (installation: Installation, ageings: readonly Ageing[]): Series[] =>
  seriesIn(installation.names, daysOfSupply(installation), ageings);

const clampsOnBoards = memoOfPlaces(({ context }) => deadOfBoard(context).filter(isWithClamp));

/** A main conductor is read with the supply or with the dead tests of a board: both are days of one. */
export function bondingSeries(installation: Installation): Series[] {
  const withClamps = [...daysOfSupply(installation).filter(isWithClamp), ...clampsOnBoards(installation).flat()];
  return seriesIn(
    installation.names,
    withClamps.sort((a, b) => inOrder(b.on, a.on)),
    ["clamp"],
  );
}

const isWithClamp = (test: DatedTest): boolean => slotsIn([test], ["clamp"]).length > 0;
