import type { Source } from "../tables/source.ts";

/** One line of working: the formula, the same with numbers, and what it comes to. */
export interface Step {
  readonly formula: string;
  readonly numbers: string;
  readonly result: string;
  /** Where the result is read: a table, or what it was looked up for. */
  readonly from?: string;
}

/**
 * A value with the way to it. Units are base units: Ω, A, V, m, mm², s, °C. A class, so that a copy by spreading, which
 * would lose steps that are not written out yet, does not compile.
 */
export abstract class Calculated {
  abstract readonly value: number;
  abstract readonly unit: string;
  abstract get steps(): readonly Step[];
  abstract readonly source: Source;
}

/** A value whose steps are written out when somebody looks at them: of a thousand that are calculated few are shown. */
class Worked implements Calculated {
  readonly value: number;
  readonly unit: string;
  readonly source: Source;
  #steps: readonly Step[] | (() => readonly Step[]);

  constructor(value: number, unit: string, source: Source, steps: () => readonly Step[]) {
    this.value = value;
    this.unit = unit;
    this.source = source;
    this.#steps = steps;
  }

  get steps(): readonly Step[] {
    if (typeof this.#steps === "function") this.#steps = this.#steps();
    return this.#steps;
  }
}

/** A value with steps that are written out when they are asked for. */
export const worked = (value: number, unit: string, source: Source, steps: () => readonly Step[]): Calculated =>
  new Worked(value, unit, source, steps);

/** The steps as a person would write them, a line each. A part that repeats the one before it is left out. */
export function working(steps: readonly Step[]): string {
  return steps.map(line).join("\n");
}

function line({ formula, numbers, result, from }: Step): string {
  const parts = [formula, numbers, result].filter((part, index, all) => part !== "" && part !== all[index - 1]);
  return `${parts.join(" = ")}${from === undefined ? "" : ` (${from})`}`;
}

/** A step in one breath. */
export function step(formula: string, numbers: string, result: string): Step {
  return { formula, numbers, result };
}

/** A figure that is looked up and not worked out. */
export function looked(name: string, from: string, result: string): Step {
  return { formula: name, numbers: "", result, from };
}

/** A step that is stated and not calculated. */
export function remark(text: string): Step {
  return step(text, "", "");
}

/** A relation with ≤ or ≥, whether it holds, and the two figures as they stand to each other. */
export function relation(asked: string, left: string, right: string, holds = false): Step {
  const most = asked.includes("≤");
  const sign = holds ? (most ? "≤" : "≥") : most ? ">" : "<";
  return remark(`${asked} ${holds ? "holds" : "does not hold"}: ${left} ${sign} ${right}`);
}

/**
 * Half-up rounding, as tables are printed. The tiny lift undoes binary noise: 2.875 is stored a hair below itself in
 * products, and a table rounds it up. To more decimals than a number can hold it is what it is.
 */
export function round(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  if (!Number.isFinite(value * scale)) return value;
  return Math.round(value * scale * (1 + 1e-12)) / scale;
}

/** Cuts off after so many decimals: the rounding that never raises a limit. */
export function truncate(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  return Math.floor(value * scale * (1 + 1e-12)) / scale;
}

/** A number with at most so many decimals and no trailing zeros. */
export function plain(value: number, decimals = 2): string {
  return Number.isFinite(value) ? String(round(value, decimals)) : "∞";
}

/** Ω as a person writes them: two decimals, a third below 0.1 Ω where it says something, none needed from 10 Ω. */
export function ohms(value: number): string {
  if (!Number.isFinite(value)) return "∞ Ω";
  const size = Math.abs(value);
  if (size >= 10) return `${plain(value, size >= 100 ? 0 : 2)} Ω`;
  const decimals = size > 0 && size < 0.1 ? 3 : 2;
  return `${round(value, decimals)
    .toFixed(decimals)
    .replace(/(\.\d\d)0$/, "$1")} Ω`;
}

/** Ω written as mΩ, for resistance per metre. */
export function milliohms(value: number): string {
  return `${plain(value * 1000, 3)} mΩ`;
}

/** Ω written as MΩ, for insulation. */
export function megohms(value: number): string {
  // Below a tenth of a megohm two decimals would show another figure than was read.
  return `${plain(value / 1e6, Math.abs(value) < 1e5 ? 3 : 2)} MΩ`;
}

/** Decimals of three significant figures: two below 10, one below 100, none beyond. */
const threeFigures = (size: number): number => (size < 10 ? 2 : size < 100 ? 1 : 0);

/**
 * A in three significant figures. `beside` is what it is compared with: both then get the decimals, two at most, that it
 * takes to show which of the two is greater.
 */
export function amps(value: number, beside?: number): string {
  let decimals = threeFigures(Math.abs(value));
  if (beside !== undefined) while (decimals < 2 && value !== beside && hidesOrder(value, beside, decimals)) decimals++;
  return `${plain(value, decimals)} A`;
}

const hidesOrder = (value: number, beside: number, decimals: number): boolean =>
  Math.sign(round(value, decimals) - round(beside, decimals)) !== Math.sign(value - beside);

/**
 * A of an estimate or a bound, without digits that nobody knows: whole amperes from 10 A. `beside` is what it is compared
 * with, and one decimal more is shown where rounding would hide which of the two is greater.
 */
export function roughAmps(value: number, beside?: number): string {
  const decimals = Math.abs(value) < 10 ? 1 : 0;
  const shown = round(value, decimals);
  const hides = beside !== undefined && Math.sign(shown - beside) !== Math.sign(value - beside);
  return `${plain(value, hides ? decimals + 1 : decimals)} A`;
}

/** A written as kA, for fault currents. */
export function kiloamps(value: number): string {
  // Below a tenth of a kiloampere two decimals would show another figure than was written.
  return `${plain(value / 1000, Math.abs(value) < 100 ? 3 : 2)} kA`;
}

/** A written as mA, for residual currents. */
export function milliamps(value: number): string {
  return `${plain(value * 1000)} mA`;
}

export function volts(value: number): string {
  return `${plain(value)} V`;
}

export function metres(value: number): string {
  return `${plain(value)} m`;
}

export function squareMillimetres(value: number): string {
  return `${plain(value)} mm²`;
}

export function seconds(value: number): string {
  return `${plain(value, 3)} s`;
}

/** s written as ms, for RCD times. */
export function milliseconds(value: number): string {
  return `${plain(value * 1000, 1)} ms`;
}

export function degrees(value: number): string {
  return `${plain(value, 1)} °C`;
}

export function percent(value: number): string {
  return `${plain(value)} %`;
}
