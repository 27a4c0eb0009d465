import type { Edition } from "../tables/editions.ts";
import type { Calculated } from "./result.ts";

/** What decides the greatest earth fault loop impedance. Rating in A, time in s, U0 in V. */
export interface LoopQuestion {
  /** As a schedule writes it: "BS EN 60898", "BS EN 61009-1", "BS 3871", "BS 88-2", "BS 88-3", "BS 3036", "BS 1361", "BS 1362". */
  readonly standard: string;
  /** B, C or D; 1, 2, 3 or 4 for BS 3871. */
  readonly curve?: string;
  readonly rating: number;
  /** 0.4 or 5 in TN; 0.2 or 1 in TT. */
  readonly time: number;
  readonly U0: number;
  readonly edition: Edition;
}

/** A limit as the table prints it, with the quotient before rounding (Ω). */
export interface LoopLimit extends Calculated {
  readonly exact: number;
}

/** One way of stating the limit for a reading taken cold. */
export interface ColdStyle extends Calculated {
  readonly style: string;
}

export interface ColdLimit extends ColdStyle {
  /** The other published ways of saying "about 80 %". */
  readonly others: readonly ColdStyle[];
  /** The full limit brought to the temperature of the test, when that is known. */
  readonly corrected?: ColdStyle;
}

export interface ColdConditions {
  /** Temperature of the conductors during the test, °C. */
  readonly temperature?: number;
  /** Operating temperature of the conductor; 70 °C when left out. */
  readonly insulation?: 70 | 90;
}

export function loopLimit(_question: LoopQuestion): LoopLimit | undefined {
  return undefined;
}

export function coldLimit(_limit: LoopLimit, _conditions: ColdConditions = {}): ColdLimit {
  throw new Error("to follow");
}
