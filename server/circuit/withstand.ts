/** The short-circuit current busbar trunking withstands. */
import { greatestBy } from "../calc/compare.ts";
import { type Calculated, kiloamps, step } from "../calc/result.ts";
import type { Cable } from "./cable.ts";

export interface Withstood extends Calculated {
  readonly name: "Icw" | "Icc";
}

/** The greater of what it withstands for a time and behind the device it was tested with, A. */
export function greatestWithstand(cable: Cable | undefined): Withstood | undefined {
  const withstands = cable?.own?.withstands;
  const name = greatestBy(["Icw", "Icc"] as const, (one) => withstands?.[one]?.value)?.one;
  const figure = name && withstands?.[name];
  if (!figure) return undefined;
  const { value, source } = figure;
  return { name, value, unit: "A", steps: [step(`${name} of the busbar trunking`, "", kiloamps(value))], source };
}
