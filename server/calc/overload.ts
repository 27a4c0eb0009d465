import { overloadRules, overloadSources } from "../tables/factors.ts";
import type { Source } from "../tables/source.ts";
import { combine, fromFormula, sourced } from "../tables/source.ts";
import { familyOf } from "../tables/standard-values.ts";
import { known } from "../tables/table.ts";
import { exceeds } from "./compare.ts";
import type { Calculated } from "./result.ts";
import { amps, plain, relation as relationStep, step, worked } from "./result.ts";

/** Design current, rating and capacity, A. */
interface OverloadQuestion {
  readonly standard: string;
  readonly Ib: number;
  readonly In: number;
  readonly Iz: Calculated;
}

/** One relation of 433.1.1, whether it holds, and by how much (A, negative when it does not). */
export interface Relation {
  readonly name: "Ib ≤ In" | "Ib ≤ Iz" | "Ir ≤ Iz" | "√3 × Ir ≤ Iz" | "In ≤ Iz" | "I2 ≤ 1.45 × Iz";
  readonly holds: boolean;
  readonly margin: Calculated;
  /** What it compares, A: the second is never to be passed by the first. */
  readonly value: number;
  readonly limit: number;
}

/**
 * Ib ≤ In ≤ Iz and I2 ≤ 1.45 Iz. The last is left out where the operating current of the device is not known, or where
 * it follows from In ≤ Iz anyway.
 */
export function overload({ standard, Ib, In, Iz }: OverloadQuestion): Relation[] {
  const rule = ruleSource();
  const I2 = operatingCurrent(standard, In);
  const relations = [relation("Ib ≤ In", Ib, In, rule), relation("In ≤ Iz", In, Iz.value, combine(rule, Iz.source))];
  if (I2 === undefined) return relations;
  const limit = multiple().value * Iz.value;
  const last = relation("I2 ≤ 1.45 × Iz", I2.value, limit, combine(rule, Iz.source, I2.source));
  const { value, unit, source } = last.margin;
  return [...relations, { ...last, margin: worked(value, unit, source, () => [...I2.steps, ...last.margin.steps]) }];
}

/**
 * Where an overload relay set to Ir (A) protects the cable instead of the device at the board (433.2.2): the relay and the
 * load are within what the cable carries, and the device within nothing but the load.
 */
export function overloadByRelay({
  Ib,
  In,
  Iz,
  relay,
}: Omit<OverloadQuestion, "standard"> & {
  /** What the relay lets the lines carry, A; before the windings of a star-delta starter it is set to 1/√3 of that. */
  readonly relay: { readonly lines: number; readonly inWindings: boolean };
}): Relation[] {
  const rule = ruleSource();
  const both = combine(rule, Iz.source);
  return [
    relation("Ib ≤ In", Ib, In, rule),
    relation("Ib ≤ Iz", Ib, Iz.value, both),
    relation(relay.inWindings ? "√3 × Ir ≤ Iz" : "Ir ≤ Iz", relay.lines, Iz.value, both),
  ];
}

/**
 * Whether a device (A) is above a capacity by no more than the factors in it are rounded to: 17.5 A × 0.57 is 9.98 A, and
 * a group of factors of two figures does not tell it from 10 A.
 */
export const isWithinRounding = (In: number, Iz: number): boolean =>
  exceeds(In, Iz) && !exceeds(In, Iz * (1 + halfOfLastFigure));

/** By what share a factor that is printed with two figures, such as 0.57, can be rounded and still be below 1. */
const halfOfLastFigure = 0.005;

export const groundShare = (): number => known(overloadRules, { key: "ground" }, "value").value;

/** The most a device (A) before a cable in the ground may be rated: 0.9 of what the cable carries there. */
export function groundOverload(Iz: Calculated): Calculated {
  const share = groundShare();
  const value = share * Iz.value;
  const steps = [...Iz.steps, step("Cc in the ground × Iz", `${plain(share)} × ${amps(Iz.value)}`, amps(value))];
  return { value, unit: "A", steps, source: fromFormula(combine(overloadSources.ground, Iz.source)) };
}

/** Current (A) that surely operates a device in conventional time; undefined where it is not known here. */
export function operatingCurrent(standard: string, In: number): Calculated | undefined {
  const factor = operatingMultiple(standard);
  if (factor === undefined) return undefined;
  const value = factor.value * In;
  return worked(value, "A", fromFormula(factor.source), () => [
    step(`I2 = ${plain(factor.value)} × In`, `${plain(factor.value)} × ${amps(In)}`, amps(value)),
  ]);
}

function operatingMultiple(standard: string) {
  switch (familyOf(standard)) {
    case "breaker":
      return multiple();
    case "BS 88-2":
    case "BS 88-3":
      return sourced(
        multiple().value,
        "BS 7671:2018+A2:2022, 433.1.202",
        "memory",
        "gG fuses are taken as breakers are.",
      );
    case "BS 3036":
      // 0.725 is 1.45 over the fusing factor, so the factor is had back from it.
      return sourced(
        multiple().value / known(overloadRules, { key: "semi-enclosed" }, "value").value,
        overloadSources.semiEnclosed.ref,
        "computed",
      );
    default:
      return undefined;
  }
}

function multiple() {
  const { value } = known(overloadRules, { key: "breaker" }, "value");
  return { value, source: overloadSources.breaker };
}

const ruleSource = (): Source => overloadSources.relation;

function relation(name: Relation["name"], smaller: number, larger: number, source: Source): Relation {
  // A hair of tolerance: 20 A against 20 A must hold after a chain of products.
  const holds = !exceeds(smaller, larger);
  const margin = larger - smaller;
  const steps = () => [relationStep(name, amps(smaller, larger), amps(larger, smaller), holds)];
  return { name, holds, margin: worked(margin, "A", fromFormula(source), steps), value: smaller, limit: larger };
}
