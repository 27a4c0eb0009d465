import type { Source } from "../tables/source.ts";
import { combine, fromFormula, summed } from "../tables/source.ts";
import { addition, quotientOf, reproducible } from "./reproducible.ts";
import type { Calculated } from "./result.ts";
import { kiloamps, ohms, type Step, step, volts, worked } from "./result.ts";

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

const impedancesOf = (cables: readonly FaultCable[]): Sum => ({
  R: cables.reduce((all, { resistance }) => all + resistance.value, 0),
  X: cables.reduce((all, { reactance }) => all + (reactance?.value ?? 0), 0),
});

/**
 * A that surely flow: what lies before the cables is added as if it had the angle of the cables, which no angle exceeds.
 * Without reactance all is added as resistances: what is usually calculated.
 */
export function faultAlong({ voltage, start, cables }: FaultPath): Calculated {
  const { R, X } = impedancesOf(cables);
  const parts = [start.value, ...cables.map(({ resistance }) => resistance.value)];
  const total = X > 0 ? start.value + Math.hypot(R, X) : parts.reduce((all, part) => all + part, 0);
  const numbers = (): Step => {
    if (X === 0)
      return reproducible(
        "Z",
        parts.map((part) => [part, ohms]),
        addition,
        [total, ohms],
      );
    return lineOfThree([start.value, R, X], total, (z, r, x) => `${z} + √(${r}² + ${x}²)`, addedAlike);
  };
  return current(voltage, total, numbers, { start, cables }, X > 0 ? withReactance : sum);
}

/** A that flow at most, whatever the angle of the source: the angle furthest from that of the cables. */
export function greatestAlong({ voltage, start, cables }: FaultPath): Calculated {
  const { R, X } = impedancesOf(cables);
  const asReactance = Math.hypot(R, start.value + X);
  const asResistance = Math.hypot(start.value + R, X);
  const total = X > 0 ? Math.min(asReactance, asResistance) : Math.hypot(start.value, R);
  const numbers = (): Step => {
    const figures = [start.value, R, X] as const;
    if (X === 0) return lineOfThree(figures, total, (z, r) => `√(${z}² + ${r}²)`, Math.hypot);
    return asReactance <= asResistance
      ? lineOfThree(
          figures,
          total,
          (z, r, x) => `√(${r}² + (${z} + ${x})²)`,
          (z, r, x) => Math.hypot(r, z + x),
        )
      : lineOfThree(
          figures,
          total,
          (z, r, x) => `√((${z} + ${r})² + ${x}²)`,
          (z, r, x) => Math.hypot(z + r, x),
        );
  };
  return current(voltage, total, numbers, { start, cables }, bound);
}

type Three<Part, Whole> = (start: Part, R: Part, X: Part) => Whole;

const addedAlike: Three<number, number> = (start, R, X) => start + Math.hypot(R, X);

/** Z of what lies before the cables, and of their resistance and reactance. */
function lineOfThree(
  [z, r, x]: readonly [number, number, number],
  total: number,
  write: Three<string, string>,
  compute: Three<number, number>,
): Step {
  return reproducible(
    "Z",
    [
      [z, ohms],
      [r, ohms],
      [x, ohms],
    ],
    { write, compute },
    [total, ohms],
  );
}

const withReactance: Source = { ref: "Impedances in series, resistance and reactance apart", standing: "computed" };

function current(
  voltage: number,
  total: number,
  numbers: () => Step,
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
    numbers(),
    reproducible(
      "I = U / Z",
      [
        [voltage, volts],
        [total, ohms],
      ],
      quotientOf,
      [value, kiloamps],
    ),
  ]);
}
