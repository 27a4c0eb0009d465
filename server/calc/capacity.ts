import type { Sourced } from "../tables/source.ts";
import type { Calculated } from "./result.ts";

export type Construction = "singles" | "flat-twin" | "multicore" | "armoured";
export type Method = "A" | "B" | "C" | "D" | "E" | "100" | "101" | "102" | "103";

/** Which column of which rating table. csa in mm². */
export interface CapacityQuestion {
  readonly construction: Construction;
  readonly insulation: 70 | 90;
  readonly method: Method;
  /** Loaded conductors: 2 single-phase, 3 three-phase. */
  readonly loaded: 2 | 3;
  readonly csa: number;
}

/** Ambient and ground in °C, insulated in mm of cable totally surrounded by thermal insulation. */
export interface Conditions {
  readonly It: Sourced<number>;
  readonly insulation: 70 | 90;
  readonly ambient?: number;
  readonly ground?: number;
  readonly grouped?: { readonly circuits: number; readonly arrangement: Arrangement };
  readonly insulated?: number;
  readonly semiEnclosed?: boolean;
}

export type Arrangement = "bunched" | "wall" | "tray" | "ladder";

/** A corrected capacity, or the factor that no table here gives. */
export type Corrected = Calculated | { readonly missing: string };

export function tabulatedCapacity(_question: CapacityQuestion): Sourced<number> | undefined {
  return undefined;
}

export function correctedCapacity(_conditions: Conditions): Corrected {
  return { missing: "everything" };
}
