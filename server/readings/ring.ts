/**
 * A ring final as its tests show it: the ends, and each point with what it should read there. Checks, hovers and
 * worksheets share this one reading.
 */

import { sumStep } from "../calc/reproducible.ts";
import { type Calculated, ohms, step, worked } from "../calc/result.ts";
import {
  expectedSpan,
  quarterLineCpc,
  quarterLineNeutral,
  readingAt,
  ringTolerance,
  spurAddition,
} from "../calc/ring.ts";
import { memoByObject } from "../circuit/kept.ts";
import type { PlaceOnRun } from "../circuit/runs.ts";
import type { Test } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { type FactOf, type Quantity, quantityOf, type Reading } from "../model/values.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";
import { combine } from "../tables/source.ts";
import { latestDead, temperatureOf, warmed } from "./dead.ts";

export type Round = "L-N" | "L-E";
export const rounds: readonly Round[] = ["L-N", "L-E"];
export type EndName = "r1" | "rn" | "r2";

/** One reading of the ring test. Off scale means that no path was found. */
export interface RingValue {
  readonly quantity: Quantity;
  readonly open: boolean;
  /** Ω; nothing where it is off scale. */
  readonly value: number | undefined;
}

/** What a point should read in one round: between `least` and `greatest`, each way by the tolerance. Ω. */
export interface Expectation {
  readonly least: number;
  readonly greatest: number;
  readonly tolerance: number;
  /** The greatest of it, with the way to it. */
  readonly by: Calculated;
}

export interface RingPoint {
  readonly name: string;
  readonly fact: FactOf<"dead", "at">;
  readonly place: PlaceOnRun | undefined;
  /** Whether the runs, or the number of spurs, leave it open that this point is on a spur of unknown length. */
  readonly mayBeSpur: boolean;
  readonly readings: { readonly [R in Round]?: RingValue };
  readonly expected: { readonly [R in Round]?: Expectation };
}

export interface RingStudy {
  readonly ends: FactOf<"dead", "ends"> | undefined;
  readonly endsTest: Test<"dead"> | undefined;
  readonly values: { readonly [E in EndName]?: RingValue };
  readonly points: readonly RingPoint[];
  /** (r1 + rn)/4 and (r1 + r2)/4, where the ends give them. */
  readonly quarter: { readonly [R in Round]?: Calculated };
  readonly temperature: number | undefined;
}

export function ringValue(reading: Reading | undefined): RingValue | undefined {
  const quantity = quantityOf(reading);
  if (!quantity) return undefined;
  const open = quantity.sign === ">";
  return { quantity, open, value: open ? undefined : quantity.value };
}

/** The ring test of a way; the same object for as long as its study is. */
export const studyRing = memoByObject(readRing);

function readRing(study: WayStudy): RingStudy {
  const ends = latestDead(study, "ends");
  const values = valuesOf(ends?.fact);
  const temperature = ends && temperatureOf(ends.test);
  const bare = { ends: ends?.fact, endsTest: ends?.test, values, temperature };
  const quarter = quartersOf(values);
  return { ...bare, quarter, points: pointFacts(study).map((fact) => pointOf(study, fact, values, temperature)) };
}

function valuesOf(ends: FactOf<"dead", "ends"> | undefined): RingStudy["values"] {
  const found: { [E in EndName]?: RingValue } = {};
  for (const name of ["r1", "rn", "r2"] as const) {
    const value = ringValue(ends?.args[name]);
    // An end that reads nothing is a slip of the test: nothing is expected of the points by it.
    if (value) found[name] = value.quantity.value > 0 ? value : { ...value, value: undefined };
  }
  return found;
}

/** What was read at each point, the latest reading of each. */
function pointFacts(study: WayStudy): FactOf<"dead", "at">[] {
  const found = new Map<string, FactOf<"dead", "at">>();
  for (const test of study.deadTests) {
    const here = test.facts.all("at").filter((fact) => !found.has(fact.args.point.value));
    for (const fact of here) found.set(fact.args.point.value, fact);
  }
  return [...found.values()].sort((a, b) => a.start - b.start);
}

function quartersOf({ r1, rn, r2 }: RingStudy["values"]): RingStudy["quarter"] {
  if (r1?.value === undefined) return {};
  const whole = { r1: r1.value, rn: rn?.value ?? Number.NaN, r2: r2?.value ?? Number.NaN };
  return {
    ...(rn?.value === undefined ? {} : { "L-N": quarterLineNeutral(whole) }),
    ...(r2?.value === undefined ? {} : { "L-E": quarterLineCpc(whole) }),
  };
}

function pointOf(
  study: WayStudy,
  fact: FactOf<"dead", "at">,
  values: RingStudy["values"],
  temperature: number | undefined,
): RingPoint {
  const name = fact.args.point.value;
  const place = study.runs?.places.get(name);
  const readings: { [R in Round]?: RingValue } = {};
  const expected: { [R in Round]?: Expectation } = {};
  for (const round of rounds) {
    const value = ringValue(fact.args[round]);
    if (value) readings[round] = value;
    const expectation = expectationOf(study, values, place, round, temperature);
    if (expectation) expected[round] = expectation;
  }
  const mayBeSpur = !place && (study.facts.one("spurs")?.args.count.value ?? 0) > 0;
  return { name, fact, place, mayBeSpur, readings, expected };
}

/** What any point of a way's ring should read, measured or not: for the hover on its name. */
export function expectationAt(study: WayStudy, name: string, round: Round): Expectation | undefined {
  const { values, temperature } = studyRing(study);
  return expectationOf(study, values, study.runs?.places.get(name), round, temperature);
}

function expectationOf(
  study: WayStudy,
  values: RingStudy["values"],
  place: PlaceOnRun | undefined,
  round: Round,
  temperature: number | undefined,
): Expectation | undefined {
  const first = values.r1?.value;
  const second = round === "L-N" ? values.rn?.value : values.r2?.value;
  if (first === undefined || second === undefined) return undefined;
  const onRing = onRingExpectation(study, first, second, place);
  if (!onRing || !place?.spur) return onRing;
  const { cable } = study;
  const cpc = cable?.cpcBy === "armour" ? undefined : cable?.cpc;
  const size = round === "L-N" ? cable?.line : cpc;
  if (!cable || size === undefined) return undefined;
  const adds = spurAddition({ length: place.spur.length, line: cable.line, cpc: size });
  if (!adds || cable.material !== "copper") return undefined;
  const added = warmed(adds.lineCpc, temperature);
  const greatest = onRing.greatest + added.value;
  return {
    least: onRing.least + added.value,
    greatest,
    tolerance: onRing.tolerance + added.value * deadTestPractice.spurShare.value,
    by: worked(greatest, "Ω", combine(onRing.by.source, added.source), () => [
      ...onRing.by.steps,
      ...added.steps,
      sumStep("with the spur", [onRing.greatest, added.value], ohms, greatest),
    ]),
  };
}

function onRingExpectation(
  study: WayStudy,
  first: number,
  second: number,
  place: PlaceOnRun | undefined,
): Expectation | undefined {
  const fraction = place && fractionOf(study, place);
  const tolerance = ringTolerance.value;
  if (fraction !== undefined) {
    const at = readingAt(first, second, fraction);
    if (!at) return undefined;
    const by = worked(at.value, at.unit, combine(at.source, ringTolerance.source), () => at.steps);
    return { least: at.value, greatest: at.value, tolerance, by };
  }
  const span = expectedSpan(first, second);
  if (!span) return undefined;
  const [least, greatest] = [span.least.value, span.greatest.value];
  const by = worked(greatest, "Ω", combine(span.greatest.source, ringTolerance.source), () => [
    step("at the board, r1 × r2 / (r1 + r2)", "", ohms(least)),
    step("half way round, (r1 + r2) / 4", "", ohms(greatest)),
  ]);
  return { least, greatest, tolerance, by };
}

/** How far round the ring a place is, from 0 to 1; for a spur, where it leaves the ring. */
export function fractionOf(study: WayStudy, place: PlaceOnRun): number | undefined {
  const { runs } = study;
  if (!runs?.closed || runs.mainLength <= 0 || study.facts.isUnread("run")) return undefined;
  if (!place.spur) return place.fromBoard / runs.mainLength;
  if (place.spur.from === runs.board) return 0;
  const from = runs.places.get(place.spur.from);
  return from && from.fromBoard / runs.mainLength;
}
