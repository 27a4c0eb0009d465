import { type LeakageLimit, leakageLimits } from "../tables/leakage.ts";
import { fromFormula, type Sourced } from "../tables/source.ts";
import { standardResiduals } from "../tables/standard-values.ts";
import { known, rowOf } from "../tables/table.ts";
import { exceeds } from "./compare.ts";
import { type Calculated, looked, milliamps, percent, squareMillimetres, step } from "./result.ts";

/** A figure of leakageLimits by its short name, with the regulation it stands in. */
function limitOf(key: LeakageLimit["key"]): Sourced<number> & { readonly item: string } {
  const { value, source } = known(leakageLimits, { key }, "value");
  const facts = rowOf(leakageLimits, { key })?.facts;
  const ref = leakageLimits.ref.replace(/,.*/, `, ${facts?.clause ?? ""}`);
  return { value, source: { ...source, ref }, item: facts?.item ?? "" };
}

/** A of protective conductor current that may stand behind an RCD of a rated residual current in A. */
export function leakageLimit(sensitivity: number): Calculated {
  const share = limitOf("share");
  const value = share.value * sensitivity;
  const numbers = `${percent(share.value * 100)} × ${milliamps(sensitivity)}`;
  const steps = [step("at most in normal service", numbers, milliamps(value))];
  return { value, unit: "A", steps, source: fromFormula(share.source) };
}

/** A from which a protective conductor must not be a single thin one. */
export function highLeakage(): Calculated {
  const { value, source, item } = limitOf("high");
  return { value, unit: "A", steps: [looked(item, source.ref, milliamps(value))], source };
}

/** mm² of a protective conductor that may stand alone; smaller ones need a second, or protection from damage. */
export function singleProtective(protection: "none" | "mechanical" = "none"): Calculated {
  const { value, source, item } = limitOf(protection === "none" ? "single-cpc" : "protected-cpc");
  return { value, unit: "mm²", steps: [looked(item, source.ref, squareMillimetres(value))], source };
}

/** The next rated residual current behind which so much may flow, A. */
export function residualFor(leakage: number): number | undefined {
  const made = standardResiduals.rows.map(({ facts }) => facts.residual).toSorted((one, other) => one - other);
  return made.find((residual) => !exceeds(leakage, leakageLimit(residual).value));
}
