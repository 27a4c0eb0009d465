import { loopTerms } from "../tables/loop-breakers.ts";
import type { Source } from "../tables/source.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { rowOf, sourceOf } from "../tables/table.ts";
import { sumStep } from "./reproducible.ts";
import type { Calculated } from "./result.ts";
import { milliohms, ohms, step, worked } from "./result.ts";

/** Zs (Ω) of a circuit: the impedance where it begins, Ze or a board's Zdb, and its own R1+R2. Impedances are added as resistances, which errs upward. */
export function totalLoop(start: number, r1r2: number, name: "Ze" | "Zdb" = "Ze"): Calculated {
  const value = start + r1r2;
  return worked(value, "Ω", rule(), () => [sumStep(`Zs = ${name} + (R1+R2)`, [start, r1r2], ohms, value)]);
}

/** What two conductors side by side come to, each with its working: 1/R = 1/R1 + 1/R2. In whatever unit they have. */
export function inParallel(one: Calculated, other: Calculated, name = "R"): Calculated {
  const value = 1 / (1 / one.value + 1 / other.value);
  const shown = (of: number) => (one.unit === "Ω/m" ? `${milliohms(of)}/m` : ohms(of));
  const numbers = `1 / (1/${shown(one.value)} + 1/${shown(other.value)})`;
  const steps = [...one.steps, ...other.steps, step(`${name} side by side`, numbers, shown(value))];
  return { value, unit: one.unit, steps, source: fromFormula(combine(one.source, other.source)) };
}

function rule(): Source {
  const row = rowOf(loopTerms, { key: "loop" });
  if (row === undefined) throw new Error(`${loopTerms.id} lacks the loop`);
  return fromFormula(sourceOf(loopTerms, row, "value"));
}
