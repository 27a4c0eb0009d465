import { breakingCapacities } from "../tables/devices.ts";
import type { Source } from "../tables/source.ts";
import { familyOf } from "../tables/standard-values.ts";
import { cellOf, known } from "../tables/table.ts";
import { quotientOf, reproducible } from "./reproducible.ts";
import type { Calculated } from "./result.ts";
import { amps, kiloamps, looked, ohms, plain, step, volts, worked } from "./result.ts";

const ohmsLaw: Source = { ref: "Ohm's law", standing: "computed" };
const amperesPerKiloampere = 1000;

/** A of prospective fault current from a loop in Ω at a voltage in V; Infinity for no impedance. */
export function faultCurrent(voltage: number, impedance: number): Calculated {
  const value = voltage / impedance;
  return worked(value, "A", ohmsLaw, () => [
    reproducible(
      "I = U / Z",
      [
        [voltage, volts],
        [impedance, ohms],
      ],
      quotientOf,
      [value, prospective],
    ),
  ]);
}

/** A fault current as it is spoken of: in kA, but for one through an electrode, of which kA would show nothing. */
export const prospective = (value: number): string => (value < 100 ? amps(value) : kiloamps(value));

/** Ω of the loop that lets a current in A flow at a voltage in V. */
export function impedanceOf(voltage: number, current: number): Calculated {
  const value = voltage / current;
  return worked(value, "Ω", ohmsLaw, () => [
    reproducible(
      "Z = U / I",
      [
        [voltage, volts],
        [current, amps],
      ],
      quotientOf,
      [value, ohms],
    ),
  ]);
}

/** Ω of one line of a transformer: its impedance in %, V between lines (of one phase: across it), VA. */
export function transformerImpedance(percentage: number, voltage: number, rating: number): Calculated {
  const value = ((percentage / 100) * voltage ** 2) / rating;
  return worked(value, "Ω", plateOf, () => [
    step("Z = z% × U² / S", `${plain(percentage)} % × (${volts(voltage)})² / ${plain(rating / 1000)} kVA`, ohms(value)),
  ]);
}

const plateOf: Source = { ref: "Impedance of a transformer by its plate", standing: "computed" };

/**
 * A of three-phase fault current from the line-neutral one: doubled, as guidance advises for safety, or times √3, which
 * supposes a neutral without impedance of its own beyond the line's.
 */
export function threePhaseFault(lineNeutral: number, form: "double" | "root3" = "double"): Calculated {
  const factor = form === "double" ? 2 : Math.sqrt(3);
  const name = form === "double" ? "2" : "√3";
  const value = factor * lineNeutral;
  const steps = [
    reproducible(
      `I three-phase = ${name} × I line-neutral`,
      [[lineNeutral, amps]],
      { write: (one) => `${name} × ${one}`, compute: (one) => factor * one },
      [value, amps],
    ),
  ];
  const source: Source =
    form === "double"
      ? { ref: "Common practice, doubled line-neutral fault current", standing: "practice" }
      : { ref: "Balanced three-phase supply, √3", standing: "computed" };
  return { value, unit: "A", steps, source };
}

/** What is marked on a device: its category (S1A, M6, type II), or its rating in kA. */
interface BreakingQuestion {
  readonly standard: string;
  readonly category?: string;
  /** V, for fuses whose capacity depends on it. */
  readonly voltage?: 230 | 400;
}

/**
 * Rated breaking capacity (A). A BS 3036 fuse without a mark is taken as S1A, 1 kA. Undefined where the device must
 * state it: a breaker without its marking, or a standard not tabulated.
 */
export function breakingCapacity({ standard, category, voltage }: BreakingQuestion): Calculated | undefined {
  const name = tableName(standard);
  if (name === undefined) return undefined;
  const mark = category?.trim().toUpperCase() ?? (name === "BS 3036" ? "S1A" : undefined);
  if (mark === undefined) return undefined;
  const kiloamperes = Number(mark.replace(/KA$/, ""));
  const row = breakingCapacities.rows.find(
    ({ facts }) =>
      facts.standard === name &&
      (facts.category === null ? facts.icn === kiloamperes : facts.category === mark) &&
      (facts.volts === null || facts.volts === voltage),
  );
  if (row === undefined) return undefined;
  const { value, source } = cellOf(breakingCapacities, row, "icn");
  if (value === null) return undefined;
  const current = value * amperesPerKiloampere;
  return {
    value: current,
    unit: "A",
    steps: [looked(`${name}, marked ${mark}`, source.ref, kiloamps(current))],
    source,
  };
}

/** The conditional rating (A) of a consumer unit behind a service fuse of up to 100 A. */
export function conditionalRating(): Calculated {
  const { value, source } = known(breakingCapacities, { category: "conditional" }, "icn");
  const current = value * amperesPerKiloampere;
  return { value: current, unit: "A", steps: [looked("conditional rating", source.ref, kiloamps(current))], source };
}

function tableName(standard: string): string | undefined {
  const names: Readonly<Record<string, string>> = {
    breaker: "BS EN 60898",
    "legacy-breaker": "BS 3871",
    "BS 88-2": "BS 88",
  };
  const family = familyOf(standard);
  return family === undefined ? undefined : (names[family] ?? family);
}
