import type { Edition } from "../tables/editions.ts";
import type { Calculated } from "./result.ts";

export type InsulationKind = "selv-pelv" | "up-to-500" | "above-500";

/** Least acceptable insulation resistance in Ω, and the test voltage in V d.c. */
export interface InsulationRule {
  readonly minimum: Calculated;
  readonly testVoltage: Calculated;
}

export function insulationRule(_kind: InsulationKind, _edition: Edition): InsulationRule {
  throw new Error("to follow");
}

/** Ω of several insulation resistances tested together; undefined for none. */
export function parallelInsulation(_parts: readonly number[]): Calculated | undefined {
  return undefined;
}
