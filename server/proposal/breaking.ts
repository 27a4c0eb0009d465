import { exceeds } from "../calc/compare.ts";
import { kiloamps, relation, type Step } from "../calc/result.ts";
import { breakingOf, conditionalAt } from "../circuit/breaking.ts";
import { greatestFault } from "../circuit/faults.ts";
import type { WayStudy } from "../circuit/way.ts";
import { decision } from "./draft.ts";
import type { Decision } from "./proposal.ts";

/** Fuses break what their standard says, and no other marking can be chosen for them here. */
export function tooWeak(trial: WayStudy): string | undefined {
  const capacity = breakingOf(trial);
  const fault = greatestFault(trial.context);
  const conditional = conditionalAt(trial.context) ?? 0;
  if (!capacity || !fault || trial.device?.fact.args.class?.value === "back-up") return undefined;
  if (!exceeds(fault.value, Math.max(capacity.value, conditional))) return undefined;
  return `The device breaks ${kiloamps(capacity.value)}; up to ${kiloamps(fault.value)} may flow at this board.`;
}

/** What the device breaks against what may flow. */
export function breakingDecision(trial: WayStudy, open: string[]): Decision {
  const title = "Breaking capacity";
  const capacity = breakingOf(trial);
  const fault = greatestFault(trial.context);
  if (!fault)
    open.push("No fault current is written for this board: the breaking capacity is the usual one, not judged.");
  if (!capacity) return decision(title, "as the device is marked");
  const conditional = conditionalAt(trial.context);
  const held = fault && conditional !== undefined && fault.value > capacity.value ? conditional : capacity.value;
  const steps: Step[] = fault ? [relation(`Icn ≥ ${fault.name}`, kiloamps(held), kiloamps(fault.value), true)] : [];
  return decision(title, kiloamps(capacity.value), steps, capacity.source);
}
