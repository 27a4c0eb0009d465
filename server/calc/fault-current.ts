import type { Calculated } from "./result.ts";

/** A of prospective fault current from a loop in Ω at a voltage in V. */
export function faultCurrent(_voltage: number, _impedance: number): Calculated {
  throw new Error("to follow");
}

/** Ω of the loop that lets a current flow. */
export function impedanceOf(_voltage: number, _current: number): Calculated {
  throw new Error("to follow");
}

/** Three-phase fault current from the line-neutral one: "double" as guidance advises, "root3" with neutral as good as line. */
export function threePhaseFault(_lineNeutral: number, _form: "double" | "root3" = "double"): Calculated {
  throw new Error("to follow");
}

/** Rated breaking capacity in A where the device does not state one, or a category (S1A, M6 …) is named. */
export function breakingCapacity(_device: { standard: string; category?: string }): Calculated | undefined {
  return undefined;
}
