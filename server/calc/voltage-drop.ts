import { capacity4D5 } from "../tables/capacity-70.ts";
import { drop4D1B, drop4D2B, drop4E1B, dropLimits } from "../tables/drop.ts";
import type { Sourced } from "../tables/source.ts";
import { fromFormula } from "../tables/source.ts";
import { known, numberCell } from "../tables/table.ts";
import type { CapacityQuestion } from "./capacity.ts";
import type { Calculated } from "./result.ts";
import { amps, metres, percent, plain, step, volts, worked } from "./result.ts";

/**
 * Tabulated drop in V per ampere and metre, at operating temperature: Table 4D5 for flat cable, 4D1B for singles, 4D2B
 * for the rest at 70 °C, 4E1B at 90 °C. Undefined for a size the tables lack.
 */
export function dropPerAmpereMetre(question: CapacityQuestion): Sourced<number> | undefined {
  const cell = millivolts(question);
  return cell === undefined ? undefined : { value: cell.value / 1000, source: cell.source };
}

function millivolts({ construction, insulation, method, loaded, csa }: CapacityQuestion): Sourced<number> | undefined {
  const phases = loaded === 2 ? "phase1" : "phase3";
  if (insulation === 90) return numberCell(drop4E1B, { csa }, phases);
  if (construction === "flat-twin") return loaded === 2 ? numberCell(capacity4D5, { csa }, "drop") : undefined;
  if (construction !== "singles") return numberCell(drop4D2B, { csa }, phases);
  // In conduit and trunking the conductors lie apart enough to drop a little more than touching.
  return numberCell(drop4D1B, { csa }, `${phases}${method === "A" || method === "B" ? "AB" : "CF"}`);
}

/** Current in A, length in m of cable from the origin of the circuit to the load, or round the whole ring. */
export interface DropQuestion {
  readonly perAmpereMetre: Sourced<number>;
  readonly current: number;
  readonly length: number;
  /** A ring has a quarter of the resistance of its cable laid out. */
  readonly ring?: boolean;
}

/** Voltage drop in V: mV/A/m × Ib × L / 1000. */
export function voltageDrop({ perAmpereMetre, current, length, ring = false }: DropQuestion): Calculated {
  const value = (perAmpereMetre.value * current * length) / (ring ? 4 : 1);
  return worked(value, "V", fromFormula(perAmpereMetre.source), () => {
    const numbers = `${plain(perAmpereMetre.value * 1000)} mV/A/m × ${amps(current)} × ${metres(length)}${ring ? " / 4" : ""}`;
    return [step(ring ? "drop = mV/A/m × Ib × L / 4" : "drop = mV/A/m × Ib × L", numbers, volts(value))];
  });
}

/** A drop in V as a share of the nominal voltage, in %. */
export function dropPercent(drop: Calculated, nominal: number): Calculated {
  const value = (drop.value / nominal) * 100;
  return worked(value, "%", fromFormula(drop.source), () => [
    ...drop.steps,
    step("drop / U", `${volts(drop.value)} / ${volts(nominal)}`, percent(value)),
  ]);
}

/** Guidance for the drop from the origin to the load, in %: 3 for lighting, 5 for other uses, 6 and 8 on private supplies. */
export function dropLimit(use: "lighting" | "other", supply: "public" | "private" = "public"): Calculated {
  const key = supply === "private" ? `${use}-private` : use;
  const { value, source } = known(dropLimits, { key }, "percent");
  return {
    value,
    unit: "%",
    steps: [
      step(
        `drop advised at most, ${use === "lighting" ? "lighting" : "other than lighting"}, ${supply} supply`,
        "",
        percent(value),
      ),
    ],
    source,
  };
}
