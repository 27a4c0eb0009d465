import type { Edition } from "../tables/editions.ts";
import type { Calculated } from "./result.ts";

export type RcdType = "AC" | "A" | "F" | "B";

/** Which test of which device; multiple is of IΔn: 0.5, 1, 2 or 5. */
export interface RcdQuestion {
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

export function rcdTime(_question: RcdQuestion): RcdWindow | undefined {
  return undefined;
}

/** A at which the device may trip on a ramp. */
export interface RcdBand {
  readonly least: Calculated;
  readonly greatest: Calculated;
}

export function rcdTripBand(_type: RcdType, _rated: number): RcdBand | undefined {
  return undefined;
}

/** Whether a type covers at least what another does: AC < A < F < B. */
export function rcdCovers(_fitted: RcdType, _needed: RcdType): boolean {
  return false;
}
