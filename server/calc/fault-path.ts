import type { Source } from "../tables/source.ts";
import { combine, fromFormula, summed } from "../tables/source.ts";
import type { Calculated } from "./result.ts";
import { kiloamps, ohms, step, volts, worked } from "./result.ts";

/** A cable on the way from the origin, Ω of all that a fault current goes through. */
export interface FaultCable {
  readonly name: string;
  readonly resistance: Calculated;
}

export interface FaultPath {
  /** V across the path. */
  readonly voltage: number;
  /** Ω of what lies before the cables. */
  readonly start: Calculated;
  readonly cables: readonly FaultCable[];
}

const sum: Source = { ref: "Impedances in series, added as resistances", standing: "computed" };
const bound: Source = {
  ref: "Impedances in series, the source taken as reactance",
  standing: "computed",
  note: "No greater current can flow, whatever the phase angle of the source.",
};

/** A that flow where all impedances are added as if they were resistances: what is usually calculated. */
export function faultAlong({ voltage, start, cables }: FaultPath): Calculated {
  const parts = [start.value, ...cables.map(({ resistance }) => resistance.value)];
  const total = parts.reduce((all, part) => all + part, 0);
  return current(voltage, total, () => parts.map(ohms).join(" + "), { start, cables }, sum);
}

/** A that flow at most: the source a pure reactance, the cables pure resistance. */
export function greatestAlong({ voltage, start, cables }: FaultPath): Calculated {
  const resistance = cables.reduce((all, { resistance: { value } }) => all + value, 0);
  const total = Math.hypot(start.value, resistance);
  return current(voltage, total, () => `√(${ohms(start.value)}² + ${ohms(resistance)}²)`, { start, cables }, bound);
}

function current(
  voltage: number,
  total: number,
  numbers: () => string,
  { start, cables }: Pick<FaultPath, "start" | "cables">,
  form: Source,
): Calculated {
  const value = voltage / total;
  const source = fromFormula(combine(form, summed(start, ...cables.map(({ resistance }) => resistance))));
  return worked(value, "A", source, () => [
    ...start.steps,
    ...cables.flatMap(({ name, resistance }) => [
      ...resistance.steps,
      step(`resistance of ${name}`, "", ohms(resistance.value)),
    ]),
    step("Z", numbers(), ohms(total)),
    step("I = U / Z", `${volts(voltage)} / ${ohms(total)}`, kiloamps(value)),
  ]);
}
