import { loopTerms } from "../tables/loop-breakers.ts";
import type { Source } from "../tables/source.ts";
import { fromFormula } from "../tables/source.ts";
import { rowOf, sourceOf } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { ohms, step } from "./result.ts";

/** Zs (Ω) of a circuit: the impedance where it begins, Ze or a board's Zdb, and its own R1+R2. Impedances are added as resistances, which errs upward. */
export function totalLoop(start: number, r1r2: number, name: "Ze" | "Zdb" = "Ze"): Calculated {
  const value = start + r1r2;
  const steps = [step(`Zs = ${name} + (R1+R2)`, `${ohms(start)} + ${ohms(r1r2)}`, ohms(value))];
  return { value, unit: "Ω", steps, source: rule() };
}

/** R2 (Ω) with a second earth path beside it, as of bonded pipework: 1/R = 1/R2 + 1/Rp. */
export function withParallelPath(r2: number, path: number): Calculated {
  const value = r2 === 0 || path === 0 ? 0 : 1 / (1 / r2 + 1 / path);
  const steps = [step("R = 1 / (1/R2 + 1/Rp)", `1 / (1/${ohms(r2)} + 1/${ohms(path)})`, ohms(value))];
  return { value, unit: "Ω", steps, source: { ref: "Resistances in parallel", standing: "computed" } };
}

function rule(): Source {
  const row = rowOf(loopTerms, { key: "loop" });
  if (row === undefined) throw new Error(`${loopTerms.id} lacks the loop`);
  return fromFormula(sourceOf(loopTerms, row, "value"));
}
