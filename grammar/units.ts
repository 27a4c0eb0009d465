/** What a unit measures. A quantity in the wrong one is named as such, never converted. */
export type Physical =
  | "resistance"
  | "current"
  | "voltage"
  | "length"
  | "area"
  | "time"
  | "temperature"
  | "power"
  | "apparent"
  | "ratio"
  | "drop"
  | "perMetre"
  | "resistivity";

interface Unit {
  /** The typographic form, which the formatter writes. */
  readonly symbol: string;
  readonly physical: Physical;
  /** One of this unit in the base unit of its kind: Ω, A, V, m, m², s, °C, W, 1. */
  readonly factor: number;
  /** Other spellings that mean the same. */
  readonly also: readonly string[];
}

/** Every unit of the language. A new one is a row here; lexer, binder, completion and the reference follow. */
export const units: readonly Unit[] = [
  { symbol: "Ω", physical: "resistance", factor: 1, also: ["ohm", "ohms", "Ohm", "Ohms", "\u2126"] },
  { symbol: "mΩ", physical: "resistance", factor: 1e-3, also: ["mohm", "mOhm", "milliohm", "milliohms", "m\u2126"] },
  { symbol: "kΩ", physical: "resistance", factor: 1e3, also: ["kohm", "kOhm", "k\u2126"] },
  {
    symbol: "MΩ",
    physical: "resistance",
    factor: 1e6,
    also: ["Mohm", "MOhm", "Mohms", "megohm", "megohms", "M\u2126"],
  },
  { symbol: "GΩ", physical: "resistance", factor: 1e9, also: ["Gohm", "GOhm", "G\u2126"] },
  // Of a cable: makers print the same figure as Ω/km.
  { symbol: "mΩ/m", physical: "perMetre", factor: 1e-3, also: ["mohm/m", "mOhm/m", "m\u2126/m", "Ω/km", "ohm/km"] },
  { symbol: "K·m/W", physical: "resistivity", factor: 1, also: ["K.m/W", "Km/W", "m·K/W", "m.K/W"] },
  { symbol: "mV/A/m", physical: "drop", factor: 1e-3, also: ["mV/Am"] },
  { symbol: "kA", physical: "current", factor: 1e3, also: [] },
  { symbol: "mA", physical: "current", factor: 1e-3, also: ["milliamps"] },
  { symbol: "A", physical: "current", factor: 1, also: ["amp", "amps"] },
  { symbol: "mV", physical: "voltage", factor: 1e-3, also: [] },
  { symbol: "kV", physical: "voltage", factor: 1e3, also: [] },
  { symbol: "V", physical: "voltage", factor: 1, also: ["volt", "volts"] },
  { symbol: "mm²", physical: "area", factor: 1e-6, also: ["mm2", "sqmm"] },
  { symbol: "m²", physical: "area", factor: 1, also: ["m2", "sqm"] },
  { symbol: "mm", physical: "length", factor: 1e-3, also: [] },
  { symbol: "cm", physical: "length", factor: 1e-2, also: [] },
  { symbol: "km", physical: "length", factor: 1e3, also: [] },
  { symbol: "ms", physical: "time", factor: 1e-3, also: ["msec", "milliseconds"] },
  { symbol: "m", physical: "length", factor: 1, also: ["metre", "metres", "meter", "meters", "mtr", "mtrs"] },
  { symbol: "s", physical: "time", factor: 1, also: ["sec", "secs", "second", "seconds"] },
  { symbol: "°C", physical: "temperature", factor: 1, also: ["degC", "℃"] },
  { symbol: "kVA", physical: "apparent", factor: 1e3, also: [] },
  { symbol: "kW", physical: "power", factor: 1e3, also: ["kilowatt", "kilowatts"] },
  { symbol: "W", physical: "power", factor: 1, also: ["watt", "watts"] },
  { symbol: "%", physical: "ratio", factor: 1e-2, also: ["percent"] },
];

const bySpelling = new Map(units.flatMap((unit) => [unit.symbol, ...unit.also].map((text) => [text, unit] as const)));

/** The unit of a spelling, exact in case: `mA` and `MA` are not the same. */
export function unitOf(spelling: string): Unit | undefined {
  return bySpelling.get(spelling);
}

/** All spellings, longest first, so that a regular expression of them is greedy. */
export const unitSpellings: readonly string[] = [...bySpelling.keys()].sort((a, b) => b.length - a.length);

/** What a person calls the thing a unit measures. */
export const physicalNames: Readonly<Record<Physical, string>> = {
  resistance: "a resistance",
  current: "a current",
  voltage: "a voltage",
  length: "a length",
  area: "an area",
  time: "a time",
  temperature: "a temperature",
  power: "a power",
  apparent: "a rating in kVA",
  ratio: "a percentage",
  drop: "a voltage drop per ampere and metre",
  perMetre: "a resistance per metre",
  resistivity: "a thermal resistivity",
};
