/** The steel wire armour of a multicore cable as a conductor. */
import { armourAreas, armourEffects, armourResistance } from "../tables/armour.ts";
import { faultTemperatures, metalConstants } from "../tables/conductor-heat.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { known, numberCell } from "../tables/table.ts";
import { perMetre } from "./conductor-resistance.ts";
import type { Calculated } from "./result.ts";
import { degrees, looked, plain, squareMillimetres, step } from "./result.ts";

/** The tables print Ω per kilometre. */
const perKilometre = 1000;

const cable = (csa: number, cores: number) => `${cores} × ${squareMillimetres(csa)}, steel wire armour`;

/** Ω per metre at 20 °C of the steel wire armour; csa of a core in mm². Undefined for a size the table lacks. */
export function armourPerMetre(csa: number, cores: 2 | 3 | 4 | 5): Calculated | undefined {
  const cell = numberCell(armourResistance, { csa }, `cores${cores}`);
  if (cell === undefined) return undefined;
  const value = cell.value / perKilometre;
  return { value, unit: "Ω/m", steps: [step(`r of ${cable(csa, cores)}`, "", perMetre(value))], source: cell.source };
}

/** Cross-section of the armour wires, mm²; csa of a core in mm². Undefined for a size the table lacks. */
export function armourArea(csa: number, cores: 2 | 3 | 4 | 5): Calculated | undefined {
  const cell = cores === 5 ? undefined : numberCell(armourAreas, { csa }, `cores${cores}`);
  if (cell === undefined) return undefined;
  const steps = [looked(`cross-section of ${cable(csa, cores)}`, cell.source.ref, squareMillimetres(cell.value))];
  return { value: cell.value, unit: "mm²", steps, source: cell.source };
}

/**
 * Factor from the armour's direct-current resistance at 20 °C to what it has for alternating current in service: an
 * armour stays cooler than its cores, steel gains more per kelvin than copper, and its own field adds to it.
 */
export function armourOperatingFactor(insulation: 70 | 90): Calculated {
  const wanted = {
    case: "sheath or armour as protective conductor",
    insulation: insulation === 90 ? "ts90" : "pvc70",
  } as const;
  const initial = known(faultTemperatures, wanted, "initial");
  const beta = known(metalConstants, { material: "steel" }, "beta");
  const effect = known(armourEffects, { key: "resistance" }, "value");
  const warm = 1 + (initial.value - 20) / (beta.value + 20);
  const value = warm * effect.value;
  const steps = [
    step(
      `factor of steel armour to ${degrees(initial.value)}`,
      `1 + (${plain(initial.value)} − 20) / (${plain(beta.value)} + 20)`,
      plain(warm, 3),
    ),
    step("factor of the armour for alternating current", `${plain(warm, 3)} × ${plain(effect.value)}`, plain(value, 3)),
  ];
  return { value, unit: "", steps, source: fromFormula(combine(initial.source, beta.source, effect.source)) };
}
