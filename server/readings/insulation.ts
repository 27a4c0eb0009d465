/** Insulation readings of a way or a board, and the limit they are compared with. */

import { type InsulationKind, type InsulationRule, insulationRule } from "../calc/insulation.ts";
import { isSelvOrPelv } from "../circuit/circuit-kind.ts";
import { memoByObject } from "../circuit/kept.ts";
import { type Test, testsOf } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { closeFitting } from "../memo/close-fitting.ts";
import type { Context } from "../model/installation.ts";
import { type Absent, asBlock, type Fact, type FactOf, type Facts, isAbsent, type Quantity } from "../model/values.ts";

type InsulationFact = FactOf<"dead", "insulation">;

export interface InsulationValue {
  /** The conductors it stands between: `L-N`, `L1-E`. */
  readonly pair: string;
  readonly fact: InsulationFact;
  readonly quantity: Quantity;
  /** The earlier day it is of, where it was not read again since. */
  readonly since?: string;
}

export interface InsulationTest {
  readonly facts: readonly InsulationFact[];
  readonly values: readonly InsulationValue[];
  readonly absent: readonly { readonly pair: string; readonly fact: InsulationFact; readonly value: Absent }[];
  readonly header: Fact;
  readonly with: readonly string[];
  /** A remark stands on a line of it or in its block. */
  readonly remarked: boolean;
}

/** The latest insulation test of a way. A block whose insulation line could not be read leaves nothing. */
export const insulationOf = memoByObject((study: WayStudy): InsulationTest | undefined => latest(study.deadTests));

/**
 * Readings of earlier days of pairs that were not read again: a later test between others, or one that could not be made,
 * says nothing of them. Line and neutral joined are read to earth together and not between each other.
 */
export function notReadAgain(study: WayStudy): readonly InsulationValue[] {
  const read: InsulationValue[] = [];
  const standing: InsulationValue[] = [];
  const latest = insulationOf(study)?.header;
  for (const { facts, header, on } of study.deadTests) {
    if (facts.isUnread("insulation")) return [];
    const own = insulationLines(facts).flatMap(valuesOf);
    if (header !== latest)
      for (const value of own)
        if (!read.some((later) => covers(later, value.pair))) standing.push({ ...value, since: on });
    read.push(...own);
  }
  return standing;
}

const covers = (other: InsulationValue, pair: string): boolean =>
  other.pair === pair || (other.fact.args.joined !== undefined && other.pair.endsWith("-E") && pair.endsWith("-E"));

/** The latest insulation test of a board as a whole. */
export const boardInsulation = ({ board }: Pick<Context, "board">): InsulationTest | undefined =>
  latest(testsOf<"boardDead">(board.facts.all("dead")));

/** The lines of one block of tests, a way's or a board's: the same words stand in both. */
export const insulationLines = (facts: Facts): readonly InsulationFact[] => asBlock<"dead">(facts).all("insulation");

function latest(tests: readonly (Test<"dead"> | Test<"boardDead">)[]): InsulationTest | undefined {
  for (const test of tests) {
    if (test.facts.isUnread("insulation")) return undefined;
    const facts = insulationLines(test.facts);
    if (facts.length === 0) continue;
    const pairs = facts.flatMap(pairsOf);
    return {
      facts: closeFitting(facts),
      values: closeFitting(facts.flatMap(valuesOf)),
      absent: closeFitting(pairs.flatMap(({ pair, fact, value }) => (isAbsent(value) ? [{ pair, fact, value }] : []))),
      header: test.header,
      with: test.with,
      remarked: facts.some((fact) => fact.args.why || fact.args.surge) || test.facts.has("note"),
    };
  }
  return undefined;
}

const valuesOf = (fact: InsulationFact): InsulationValue[] =>
  pairsOf(fact).flatMap(({ pair, value }) => (isAbsent(value) ? [] : [{ pair, fact, quantity: value }]));

function pairsOf(fact: InsulationFact): { pair: string; fact: InsulationFact; value: Quantity | Absent }[] {
  return Object.entries(fact.args).flatMap(([pair, value]) =>
    pair.includes("-") && value && !("value" in value && typeof value.value === "string")
      ? [{ pair, fact, value }]
      : [],
  );
}

/** What a reading is of: one that is stated of `each` pair is the same object in all of them. */
export const pairWords = ({ pair, quantity }: InsulationValue, { values }: InsulationTest): string =>
  values.some((other) => other.pair !== pair && other.quantity === quantity) ? "Each pair" : pair;

/** That a reading counts though later tests were made. */
export const sinceWords = ({ since }: InsulationValue): string =>
  since === undefined ? "" : ` It was not read again after ${since}.`;

/** Which row of the table a circuit is judged by. */
export const insulationKind = (study: WayStudy): InsulationKind =>
  isSelvOrPelv(study) && (study.uses.size === 1 || !study.uses.has("selv")) ? "selv-pelv" : "up-to-500";

export function insulationLimit(study: WayStudy): InsulationRule | undefined {
  const { edition } = study.context;
  return edition && insulationRule(insulationKind(study), edition);
}

/** Whether a reading passes a minimum, fails it, or shows nothing about it: a bound is not a value. */
export function against({ value, sign }: Quantity, minimum: number): "passes" | "fails" | "unproven" {
  if (sign === ">") return value >= minimum ? "passes" : "unproven";
  if (sign === "<") return value <= minimum ? "fails" : "unproven";
  return value >= minimum ? "passes" : "fails";
}

/** The least reading to earth of a way: what it counts as among its neighbours. */
export function leastToEarth(study: WayStudy): InsulationValue | undefined {
  const values = insulationOf(study)?.values.filter(({ pair }) => pair.endsWith("-E")) ?? [];
  return [...values].sort((a, b) => a.quantity.value - b.quantity.value)[0];
}

/** What one reading of a way adds. */
interface InsulationPart {
  readonly study: WayStudy;
  readonly value: InsulationValue;
}

/**
 * What a way adds to a reading of its whole board. With line and neutral joined there both count; without, only what was
 * measured from line to earth alone.
 */
export function insulationParts(study: WayStudy, joined: boolean): InsulationPart[] {
  const values = insulationOf(study)?.values ?? [];
  return values
    .filter(({ pair, fact }) => pair.endsWith("-E") && (joined || (pair.startsWith("L") && !fact.args.joined)))
    .map((value) => ({ study, value }));
}
