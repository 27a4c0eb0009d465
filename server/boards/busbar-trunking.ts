/** What busbar trunking withstands, and the fault current that may flow into it. */
import { type Calculated, kiloamps, step } from "../calc/result.ts";
import { type FaultAt, greatestFault } from "../circuit/faults.ts";
import type { WayStudy } from "../circuit/way.ts";
import { greatestWithstand, type Withstood } from "../circuit/withstand.ts";
import { asWritten } from "../tables/source.ts";
import { faultLevels } from "./fault-levels.ts";
import type { BoardNode } from "./network.ts";

interface TrunkingWithstand {
  /** The greatest fault where it begins, A: as noted, or calculated, which may be more than flows. */
  readonly fault: Calculated;
  readonly noted: FaultAt | undefined;
  /** The greater of what it withstands for a time and behind the device it was tested with, A. */
  readonly most: Withstood;
}

export function trunkingWithstand(node: BoardNode, { cable }: WayStudy): TrunkingWithstand | undefined {
  const most = greatestWithstand(cable);
  const noted = greatestFault(node.context);
  const fault = noted ? asNoted(noted) : faultLevels(node)?.greatest;
  return most && fault && { fault, noted, most };
}

const asNoted = ({ value, name }: FaultAt): Calculated => ({
  value,
  unit: "A",
  steps: [step(`${name}, as noted`, "", kiloamps(value))],
  source: asWritten,
});
