import type { Calculated } from "./result.ts";

/** End-to-end readings of a ring, Ω. */
export interface RingEnds {
  readonly r1: number;
  readonly rn: number;
  readonly r2: number;
}

export function quarterLineNeutral(_ends: RingEnds): Calculated {
  throw new Error("to follow");
}

export function quarterLineCpc(_ends: RingEnds): Calculated {
  throw new Error("to follow");
}

/** Reading at a fraction of the way round (0 at the board, 0.5 opposite), opposite ends cross-connected at the board. */
export function readingAt(_first: number, _second: number, _fraction: number): Calculated {
  throw new Error("to follow");
}

/** Least and greatest reading a sound ring can show, Ω: at the board, and halfway round. */
export interface Span {
  readonly least: Calculated;
  readonly greatest: Calculated;
}

export function expectedSpan(_first: number, _second: number): Span {
  throw new Error("to follow");
}

/** What an unfused spur adds to both rounds; length in m, sizes in mm². */
export interface SpurAddition {
  readonly lineNeutral: Calculated;
  readonly lineCpc: Calculated;
}

export function spurAddition(_spur: { length: number; line: number; cpc: number }): SpurAddition | undefined {
  return undefined;
}

/** Resistance of cpc over line for the same length, by tabulated resistance. */
export function cpcRatio(_line: number, _cpc: number): Calculated | undefined {
  return undefined;
}
