import { letThroughAt } from "../boards/energy.ts";
import { selectedProtective } from "../calc/protective-size.ts";
import { kiloamps, plain } from "../calc/result.ts";
import { greatestFault } from "../circuit/faults.ts";
import type { WayStudy } from "../circuit/way.ts";

/**
 * A protective conductor below Table 54.7 is right for the fault that just trips the breaker. In a larger one the
 * breaker opens sooner than its curve is drawn to, and its let-through energy decides. A breaker of the class made
 * today may let more through than the conductor bears; the maker's own figure is mostly far less.
 */
export function energyNote(trial: WayStudy): string | undefined {
  const { device, cable } = trial;
  if (device?.family !== "breaker" || cable?.cpc === undefined) return undefined;
  if (cable.cpc >= (selectedProtective(cable.line)?.value ?? 0)) return undefined;
  const fault = greatestFault(trial.context);
  if (!fault) return "Without a fault current the breaker's let-through energy was not compared with the cpc.";
  const found = letThroughAt(trial, fault.value);
  if (!found)
    return `No figure is kept here for what the breaker lets through at ${kiloamps(fault.value)}: ask its maker.`;
  const { energy, stands } = found;
  if (energy.value <= stands.value) return undefined;
  return `At ${kiloamps(fault.value)} a class 3 breaker may let through ${plain(energy.value, 0)} A²s, and the cpc withstands ${plain(stands.value, 0)} A²s: ask the maker for the figure.`;
}
