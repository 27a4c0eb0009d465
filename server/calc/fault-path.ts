import type { Source } from "../tables/source.ts";
import { combine, fromFormula, summed } from "../tables/source.ts";
import type { Calculated } from "./result.ts";
import { kiloamps, ohms, step, volts, worked } from "./result.ts";

/** A cable on the way from the origin, Ω of all that a fault current goes through. */
export interface FaultCable {
  readonly name: string;
  readonly resistance: Calculated;
  /** Nothing where the size makes it negligible. */
  readonly reactance?: Calculated | undefined;
}

interface FaultPath {
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

/** Ω of the cables together. */
interface Sum {
  readonly R: number;
  readonly X: number;
}

const sumOf = (cables: readonly FaultCable[]): Sum => ({
  R: cables.reduce((all, { resistance }) => all + resistance.value, 0),
  X: cables.reduce((all, { reactance }) => all + (reactance?.value ?? 0), 0),
});

/**
 * A that surely flow: what lies before the cables is added as if it had the angle of the cables, which no angle exceeds.
 * Without reactance all is added as resistances: what is usually calculated.
 */
export function faultAlong({ voltage, start, cables }: FaultPath): Calculated {
  const { R, X } = sumOf(cables);
  const parts = [start.value, ...cables.map(({ resistance }) => resistance.value)];
  const total = X > 0 ? start.value + Math.hypot(R, X) : parts.reduce((all, part) => all + part, 0);
  const numbers = () => (X > 0 ? `${ohms(start.value)} + √(${ohms(R)}² + ${ohms(X)}²)` : parts.map(ohms).join(" + "));
  return current(voltage, total, numbers, { start, cables }, X > 0 ? withReactance : sum);
}

/** A that flow at most, whatever the angle of the source: the angle furthest from that of the cables. */
export function greatestAlong({ voltage, start, cables }: FaultPath): Calculated {
  const { R, X } = sumOf(cables);
  const asReactance = Math.hypot(R, start.value + X);
  const asResistance = Math.hypot(start.value + R, X);
  const total = X > 0 ? Math.min(asReactance, asResistance) : Math.hypot(start.value, R);
  const numbers = () =>
    X === 0
      ? `√(${ohms(start.value)}² + ${ohms(R)}²)`
      : asReactance <= asResistance
        ? `√(${ohms(R)}² + (${ohms(start.value)} + ${ohms(X)})²)`
        : `√((${ohms(start.value)} + ${ohms(R)})² + ${ohms(X)}²)`;
  return current(voltage, total, numbers, { start, cables }, bound);
}

const withReactance: Source = { ref: "Impedances in series, resistance and reactance apart", standing: "computed" };

function current(
  voltage: number,
  total: number,
  numbers: () => string,
  { start, cables }: Pick<FaultPath, "start" | "cables">,
  form: Source,
): Calculated {
  const value = voltage / total;
  const all = cables.flatMap(({ resistance, reactance }) => (reactance ? [resistance, reactance] : [resistance]));
  const source = fromFormula(combine(form, summed(start, ...all)));
  return worked(value, "A", source, () => [
    ...start.steps,
    ...cables.flatMap(({ name, resistance, reactance }) => [
      ...resistance.steps,
      step(`resistance of ${name}`, "", ohms(resistance.value)),
      ...(reactance ? [...reactance.steps, step(`reactance of ${name}`, "", ohms(reactance.value))] : []),
    ]),
    step("Z", numbers(), ohms(total)),
    step("I = U / Z", `${volts(voltage)} / ${ohms(total)}`, kiloamps(value)),
  ]);
}
