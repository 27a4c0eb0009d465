/** Readings of the dead tests, and what length and sizes say they should be. */
import { resistanceAt, resistancePerMetre } from "../calc/conductor-resistance.ts";
import { type Calculated, remark, type Step } from "../calc/result.ts";
import { hasResistance, isTabled } from "../circuit/cable.ts";
import { type Test, workOf } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { expectedConductor } from "../circuit/way-resistance.ts";
import { type Fact, type FactOf, isAbsent, type Quantity, type WordIn } from "../model/values.ts";
import { conductorResistance } from "../tables/conductors.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";
import { combine } from "../tables/source.ts";

interface DeadFact<W extends WordIn<"dead">> {
  readonly fact: FactOf<"dead", W>;
  readonly test: Test<"dead">;
}

/**
 * The latest statement of a word in the dead tests. Tests of one circuit are often spread over days, so a later block
 * without the word leaves the earlier one standing; one that could not be read leaves nothing.
 */
export function latestDead<W extends WordIn<"dead">>(study: WayStudy, word: W): DeadFact<W> | undefined {
  for (const test of study.deadTests) {
    if (test.facts.isUnread(word)) return undefined;
    const fact = test.facts.one(word);
    if (fact) return { fact, test };
  }
  return undefined;
}

/** The latest reading of a word: a day on which it could not be read leaves the earlier one standing. */
export function latestReadDead(study: WayStudy, word: "R1+R2" | "R2"): FactOf<"dead", "R1+R2" | "R2"> | undefined {
  for (const { facts } of study.deadTests) {
    if (facts.isUnread(word)) return undefined;
    const fact = facts.one(word);
    if (fact && !isAbsent(fact.args.value)) return fact;
  }
  return undefined;
}

/** Whether any dead test says the word, readable or not. */
export const hasDead = (study: WayStudy, word: WordIn<"dead">): boolean =>
  study.facts.isUnread("dead") || study.deadTests.some((test) => test.facts.has(word));

/**
 * A statement of new wiring that stands for a test nobody made: every reading of these words is calculated, declared or from
 * a record. Old wiring may rest on its record, and what is broken or said not to have been done is spoken of elsewhere.
 */
export function onlyStated(study: WayStudy, words: readonly WordIn<"dead">[]): Fact | undefined {
  const work = workOf(study);
  if (study.facts.isUnread("dead") || (work !== "new" && work !== "addition")) return undefined;
  const all = study.deadTests.flatMap(({ facts }) =>
    words.some((word) => facts.isUnread(word)) ? [undefined] : facts.list.filter(isOneOf(words)),
  );
  return all.every((fact) => fact && fact.provenance !== "measured") ? all[0] : undefined;
}

const isOneOf =
  (words: readonly string[]) =>
  ({ word }: Fact): boolean =>
    words.includes(word);

/** Temperature of the conductors noted at a test, °C. */
export const temperatureOf = (test: Test<"dead">): number | undefined =>
  test.facts.one("temperature")?.args.value.value;

/** A resistance known at 20 °C, at the temperature of a test where one is noted. */
export const warmed = (cold: Calculated, temperature: number | undefined): Calculated =>
  temperature === undefined || temperature === 20 ? cold : resistanceAt(cold, temperature);

/** R1+R2 at the far point and temperature of a test; of a ring, a quarter of the sum of its ends. */
export function expectedR1R2At(study: WayStudy, test: Test<"dead">): Calculated | undefined {
  const cold = study.expectedR1R2;
  return cold && warmed(cold, temperatureOf(test));
}

/** One conductor end to end at the temperature of a test. */
export function expectedConductorAt(
  study: WayStudy,
  which: "line" | "neutral" | "cpc",
  test: Test<"dead">,
): Calculated | undefined {
  const { cable } = study;
  if (!cable || !hasResistance(cable)) return undefined;
  const cold = expectedConductor(study, which);
  return cold && warmed(cold, temperatureOf(test));
}

/** How a reading departs from what length and size give. */
export interface LengthMismatch {
  readonly kind: "high" | "low";
  /** Reading over expectation. */
  readonly ratio: number;
  /** 10, 100, 0.1 or 0.01 where the decimal point alone explains it. */
  readonly slip: number | undefined;
  /** By how much the band is left, Ω. */
  readonly by: number;
}

const slips = [10, 100, 0.1, 0.01];

/** The power of ten that a reading is of what is expected, near enough for a slip of the decimal point. */
export const decimalSlip = (ratio: number): number | undefined =>
  slips.find((power) => Math.abs(ratio / power - 1) <= deadTestPractice.slipShare.value);

/** Compares a reading with length and size: a band on both sides, and powers of ten by name. */
export function lengthMismatch(
  reading: Pick<Quantity, "value" | "sign">,
  expected: number,
): LengthMismatch | undefined {
  const { value, sign } = reading;
  const { highShare, highLeast, lowShare, lowLeast } = deadTestPractice;
  const ratio = value / expected;
  const high = value > highShare.value * expected && value - expected > highLeast.value;
  const low = value < lowShare.value * expected && expected - value > lowLeast.value;
  if (!(high && sign !== "<") && !(low && sign !== ">")) return undefined;
  const slip = sign === "=" ? decimalSlip(ratio) : undefined;
  const by = high
    ? value - Math.max(highShare.value * expected, expected + highLeast.value)
    : Math.min(lowShare.value * expected, expected - lowLeast.value) - value;
  return { kind: high ? "high" : "low", ratio, slip, by };
}

/** The band a reading may be in, as lines of working. */
export function bandSteps(expected: Calculated): Step[] {
  const { highShare, lowShare } = deadTestPractice;
  return [...expected.steps, remark(`questionable under ${lowShare.value} or over ${highShare.value} times that`)];
}

/** Where an expectation and the threshold round it come from. */
export const bandSource = (expected: Calculated) => combine(expected.source, deadTestPractice.highShare.source);

/** The same figure with its decimal point moved, as it would be written. */
export function unslipped({ value, unit }: Quantity, slip: number): string {
  const shifted = unit === "mΩ" ? (value * 1000) / slip : value / slip;
  return `${shifted.toFixed(unit === "mΩ" ? 0 : 2)} ${unit}`;
}

/** The copper or aluminium size whose resistance per metre is nearest to a figure. */
export function sizeOfResistance(perMetre: number): number | undefined {
  const near = conductorResistance.rows
    .map(({ facts }) => ({ csa: facts.csa, away: Math.abs(Math.log(facts.copper2 / 1000 / perMetre)) }))
    .sort((a, b) => a.away - b.away)[0];
  return near && near.away < Math.log(1 + deadTestPractice.ringRatio.value) ? near.csa : undefined;
}

/** What the same run would read in the other metal. */
export function otherMetal(study: WayStudy): { name: "copper" | "aluminium"; ratio: number } | undefined {
  const { cable } = study;
  if (!cable || !isTabled(cable)) return undefined;
  const copper = resistancePerMetre(cable.line, "copper");
  const aluminium = resistancePerMetre(cable.line, "aluminium");
  if (!copper || !aluminium) return undefined;
  return cable.material === "copper"
    ? { name: "aluminium", ratio: aluminium.value / copper.value }
    : { name: "copper", ratio: copper.value / aluminium.value };
}
