import type { Physical } from "./units.ts";

/** A quantity a word may need: its kind, the units it is written in and its plausible range. */
export interface QuantityKind {
  /** As a message has it: "a loop impedance". */
  readonly what: string;
  readonly physical: Physical;
  /** Units that belong here, the usual one first. A fix offers the first. */
  readonly units: readonly string[];
  /** The unit the engine calculates in. */
  readonly base: string;
  /** In the base unit: a figure outside these is a slip. */
  readonly least: number;
  readonly most: number;
}

const kind = (
  what: string,
  physical: Physical,
  units: readonly string[],
  base: string,
  least: number,
  most: number,
): QuantityKind => ({ what, physical, units, base, least, most });

/**
 * Plausible ranges are wide on purpose: they catch a slip of the unit, not a bad installation.
 * Common practice; a value inside them is left to the checks.
 */
export const quantities = {
  loop: kind("a loop impedance", "resistance", ["Ω", "mΩ"], "Ω", 0, 25_000),
  conductor: kind("a conductor resistance", "resistance", ["Ω", "mΩ"], "Ω", -1, 10_000),
  electrode: kind("an electrode resistance", "resistance", ["Ω", "kΩ"], "Ω", 0, 100_000),
  insulation: kind("an insulation resistance", "resistance", ["MΩ", "GΩ", "kΩ"], "Ω", 0, 1e13),
  meterRange: kind("the top of an instrument's range", "resistance", ["Ω", "kΩ", "MΩ", "GΩ"], "Ω", 0.1, 1e13),
  rating: kind("a rated current", "current", ["A"], "A", 0.5, 6_300),
  sensitivity: kind("a rated residual current", "current", ["mA"], "A", 0.001, 3),
  fault: kind("a fault current", "current", ["kA", "A"], "A", 1, 200_000),
  breaking: kind("a breaking capacity", "current", ["kA"], "A", 500, 200_000),
  current: kind("a current", "current", ["A", "mA"], "A", 0.001, 6_300),
  leakage: kind("a protective conductor current", "current", ["mA", "A"], "A", 0, 5),
  tripCurrent: kind("a residual current", "current", ["mA"], "A", 0.0005, 5),
  voltage: kind("a voltage", "voltage", ["V"], "V", 1, 1_000),
  testVoltage: kind("a test voltage", "voltage", ["V"], "V", 50, 5_000),
  csa: kind("a conductor size", "area", ["mm²"], "mm²", 0.2, 1_000),
  floor: kind("a floor area", "area", ["m²"], "m²", 1, 100_000),
  length: kind("a length", "length", ["m"], "m", 0.05, 5_000),
  size: kind("a size", "length", ["mm"], "mm", 5, 1_000),
  depth: kind("a depth", "length", ["mm", "m"], "mm", 5, 5_000),
  gap: kind("a clear distance", "length", ["mm", "m"], "mm", 1, 10_000),
  soil: kind("a thermal resistivity of the ground", "resistivity", ["K·m/W"], "K·m/W", 0.2, 10),
  tripTime: kind("a trip time", "time", ["ms"], "s", 0, 10),
  duration: kind("a time", "time", ["s", "ms"], "s", 0.001, 60),
  temperature: kind("a temperature", "temperature", ["°C"], "°C", -40, 150),
  power: kind("a power", "power", ["kW", "W"], "W", 0.1, 5e6),
  apparent: kind("a rating in kVA", "apparent", ["kVA"], "VA", 1, 5e6),
  dropPer: kind("a voltage drop per ampere and metre", "drop", ["mV/A/m", "mV"], "V", 1e-6, 1),
  perMetre: kind("a resistance per metre", "perMetre", ["mΩ/m", "mΩ"], "Ω", 1e-6, 1),
  percent: kind("a percentage", "ratio", ["%"], "%", 0, 1_000),
  share: kind("a share of the whole", "ratio", ["%"], "%", 0, 100),
} as const satisfies Record<string, QuantityKind>;

export type QuantityName = keyof typeof quantities;

/** The figures of an instrument that a reading of a quantity is taken by; a quantity without one is never read. */
export const meters = {
  loop: "loop",
  conductor: "continuity",
  electrode: "electrode",
  insulation: "insulation",
  fault: "fault",
  tripTime: "rcd-time",
  tripCurrent: "trip-current",
  leakage: "leakage",
  voltage: "voltage",
} as const satisfies Partial<Record<QuantityName, string>>;

export type MeteredName = keyof typeof meters;
/** What an instrument states its accuracy for. */
export type MeasuredKind = (typeof meters)[MeteredName];
