/** The short-circuit current busbar trunking withstands. */
import { type Calculated, kiloamps, step } from "../calc/result.ts";
import type { Cable } from "./cable.ts";

export interface Withstood extends Calculated {
  readonly name: "Icw" | "Icc";
}

/** The greater of what it withstands for a time and behind the device it was tested with, A. */
export function greatestWithstand(cable: Cable | undefined): Withstood | undefined {
  const { Icw, Icc } = cable?.own?.withstands ?? {};
  const name = (Icc?.value ?? 0) > (Icw?.value ?? 0) ? "Icc" : "Icw";
  const figure = name === "Icc" ? Icc : Icw;
  if (!figure) return undefined;
  const { value, source } = figure;
  return { name, value, unit: "A", steps: [step(`${name} of the busbar trunking`, "", kiloamps(value))], source };
}
