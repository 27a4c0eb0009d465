import { Memo } from "../memo/memo.ts";
import type { Edition } from "../tables/editions.ts";
import type { RcdTimes } from "../tables/rcd.ts";
import { rcdBands, rcdTimes } from "../tables/rcd.ts";
import { fromFormula } from "../tables/source.ts";
import { known, numberCell } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { looked, milliamps, milliseconds, plain, remark, step } from "./result.ts";

export type RcdType = "AC" | "A" | "F" | "B";

/** Which test of which device; multiple is of IΔn: 0.5, 1, 2 or 5. */
interface RcdQuestion {
  /** "BS EN 61008", "BS EN 61009", "BS EN 62423", "BS 4293", "BS 7288". */
  readonly standard: string;
  /** Time-delayed, type S. */
  readonly delayed: boolean;
  readonly multiple: number;
  readonly edition: Edition;
}

/** Times in s. At half the rated current the device must not trip: greatest is absent and least is the test's length. */
export interface RcdWindow {
  readonly greatest?: Calculated;
  readonly least?: Calculated;
  /** Whether the edition asks for this test. */
  readonly required: boolean;
}

/** Length of the test at half the rated current, s: what instruments apply. */
const halfTest = { general: 1, delayed: 2 } as const;

/** Break-time window of an RCD test. Undefined for a device or multiple without a published time. */
export function rcdTime({ standard, delayed, multiple, edition }: RcdQuestion): RcdWindow | undefined {
  const key = deviceKey(standard, delayed);
  if (key === undefined || !isPublished(multiple)) return undefined;
  const known = windows.of(edition, () => new Map());
  const name = `${key} ${multiple}`;
  if (!known.has(name)) known.set(name, computeRcdTime(key, multiple, edition));
  return known.get(name);
}

/** What follows from the tables alone lies with the edition it is for. */
const windows = new Memo<Edition, Map<string, RcdWindow | undefined>>();

/** The multiples of IΔn that a trip time, or that there is none, is published for. */
export const rcdMultiples = [0.5, 1, 2, 5] as const;
type Multiple = (typeof rcdMultiples)[number];

const isPublished = (multiple: number): multiple is Multiple => rcdMultiples.some((one) => one === multiple);

function computeRcdTime(key: RcdTimes["key"], multiple: Multiple, edition: Edition): RcdWindow | undefined {
  const required = edition.rcdTest === "single" ? multiple === 1 : multiple !== 2;
  if (multiple === 0.5) return { least: noTrip(key), required };
  const greatest = timeAt(key, `times${multiple}`, `longest at ${multiple} × IΔn`);
  const least = timeAt(key, `least${multiple}`, `shortest at ${multiple} × IΔn`);
  if (greatest === undefined) return undefined;
  return { greatest, ...(least === undefined ? {} : { least }), required };
}

function deviceKey(standard: string, delayed: boolean): RcdTimes["key"] | undefined {
  const text = standard.replace(/\s+/g, "");
  if (/61008|61009|62423/.test(text)) return delayed ? "delayed" : "general";
  // Delayed devices of the withdrawn standards had no common window.
  return /4293|7288/.test(text) && !delayed ? "legacy" : undefined;
}

function timeAt(key: RcdTimes["key"], column: keyof RcdTimes, label: string): Calculated | undefined {
  const cell = numberCell(rcdTimes, { key }, column);
  if (cell === undefined) return undefined;
  const value = cell.value / 1000;
  return { value, unit: "s", steps: [looked(label, cell.source.ref, milliseconds(value))], source: cell.source };
}

function noTrip(key: RcdTimes["key"]): Calculated {
  const value = halfTest[key === "delayed" ? "delayed" : "general"];
  const source = { ref: "Common practice, RCD test at half the rated current", standing: "practice" } as const;
  return { value, unit: "s", steps: [remark(`no trip at 0.5 × IΔn for ${milliseconds(value)}`)], source };
}

/** A at which the device may trip on a ramp. */
interface RcdBand {
  readonly least: Calculated;
  readonly greatest: Calculated;
}

/** The waveform of a test current. */
type Waveform = "sinusoidal" | "pulsating" | "smooth";

/**
 * Where on a rising current (A) of a waveform a device of a rated IΔn (A) may trip. IΔn is defined with a.c. for every
 * type. Without a waveform it is the widest band of the type; undefined where the type does not detect the waveform.
 */
export function rcdTripBand(type: RcdType, rated: number, waveform?: Waveform): RcdBand | undefined {
  const key = bandKey(type, rated, waveform);
  return key === undefined ? undefined : { least: bandEdge(key, "low", rated), greatest: bandEdge(key, "high", rated) };
}

function bandKey(type: RcdType, rated: number, waveform: Waveform | undefined): string | undefined {
  if (waveform === "smooth") return type === "B" ? "B-smooth" : undefined;
  if (waveform === "sinusoidal") return "AC";
  if (type === "AC") return waveform === undefined ? "AC" : undefined;
  return rated > 0.01 ? "A-over-10mA" : "A-to-10mA";
}

function bandEdge(key: string, column: "low" | "high", rated: number): Calculated {
  const { value: share, source } = known(rcdBands, { key }, column);
  const value = (share / 100) * rated;
  const steps = [step(`${plain(share)} % of IΔn`, `${plain(share)} % × ${milliamps(rated)}`, milliamps(value))];
  return { value, unit: "A", steps, source: fromFormula(source) };
}

const strength: readonly RcdType[] = ["AC", "A", "F", "B"];

/** Whether a type detects at least what another does: AC < A < F < B. */
export function rcdCovers(fitted: RcdType, needed: RcdType): boolean {
  return strength.indexOf(fitted) >= strength.indexOf(needed);
}
