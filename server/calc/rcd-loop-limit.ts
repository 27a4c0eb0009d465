import { rcdLoop } from "../tables/loop-rcd.ts";
import { fromFormula, quotedIn } from "../tables/source.ts";
import { supplyValues } from "../tables/supply.ts";
import { known, numberCell } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { milliamps, ohms, remark, round, step, volts } from "./result.ts";

/**
 * Greatest Zs, or electrode resistance with its protective conductor (Ω), where an RCD gives fault protection:
 * 50 V / IΔn, as Table 41.5 prints it. residual in A. Cmin has no part in it. Undefined without a rated current.
 */
export function rcdLoopLimit(residual: number): Calculated | undefined {
  if (!(residual > 0)) return undefined;
  const touch = known(supplyValues, { key: "touch-voltage" }, "value");
  const value = round(touch.value / residual, 0);
  const printed = numberCell(rcdLoop, { residual: round(residual * 1000, 3) }, "zs");
  const steps = [step("Zs = 50 V / IΔn", `${volts(touch.value)} / ${milliamps(residual)}`, ohms(value))];
  const formula = { ref: `${rcdLoop.ref}; BS 7671:2018+A2:2022, 411.5.3`, standing: touch.source.standing } as const;
  return { value, unit: "Ω", steps, source: printed?.source ?? fromFormula(formula) };
}

/** Above this an earth electrode may not stay stable (Ω): advice, not a limit. */
export function electrodeAdvice(): Calculated {
  const { value, source } = known(rcdLoop, { residual: null }, "zs");
  return { value, unit: "Ω", steps: [remark(`an electrode is taken as stable up to ${ohms(value)}`)], source };
}

/** Touch voltage (V) when the rated residual current flows through the electrode: RA × IΔn. */
export function touchVoltage(resistance: number, residual: number): Calculated {
  const value = resistance * residual;
  const numbers = `${ohms(resistance)} × ${milliamps(residual)}`;
  const source = fromFormula(quotedIn("411.5.3"));
  return { value, unit: "V", steps: [step("U = RA × IΔn", numbers, volts(value))], source };
}
