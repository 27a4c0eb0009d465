/** What busbar trunking withstands, and the fault current that may flow into it. */
import { type Calculated, kiloamps, step } from "../calc/result.ts";
import { type FaultAt, greatestFault } from "../circuit/faults.ts";
import type { WayStudy } from "../circuit/way.ts";
import { faultLevels } from "./fault-levels.ts";
import type { BoardNode } from "./network.ts";

export interface TrunkingWithstand {
  /** The greatest fault where it begins, A: as noted, or calculated, which may be more than flows. */
  readonly fault: Calculated;
  readonly noted: FaultAt | undefined;
  /** The greater of what it withstands for a time and behind the device it was tested with, A. */
  readonly most: Calculated;
  readonly name: "Icw" | "Icc";
}

export function trunkingWithstand(node: BoardNode, { cable }: WayStudy): TrunkingWithstand | undefined {
  const withstands = cable?.own?.withstands;
  const noted = greatestFault(node.context);
  const fault = noted ? asNoted(noted) : faultLevels(node)?.greatest;
  if (!withstands || !fault) return undefined;
  const { Icw, Icc } = withstands;
  const name = (Icc?.value ?? 0) > (Icw?.value ?? 0) ? "Icc" : "Icw";
  const figure = name === "Icc" ? Icc : Icw;
  if (!figure) return undefined;
  const most: Calculated = {
    value: figure.value,
    unit: "A",
    steps: [step(`${name} of the busbar trunking`, "", kiloamps(figure.value))],
    source: figure.source,
  };
  return { fault, noted, most, name };
}

const asNoted = ({ value, name }: FaultAt): Calculated => ({
  value,
  unit: "A",
  steps: [step(`${name}, as noted`, "", kiloamps(value))],
  source: { ref: "", standing: "printed" },
});
