import type { WayStudy } from "../analysis/way.ts";
import { adiabaticFactor, letThrough, selectedProtective, withstand } from "../calc/index.ts";
import { plain } from "../calc/result.ts";

/** The energy limiting class breakers are made in today. */
const limitingClass = 3;

/**
 * A protective conductor below Table 54.7 is right for the fault that just trips the breaker. In a larger one the
 * breaker opens sooner than its curve is drawn to, and its let-through energy decides: said where the greatest its
 * class may let through is more than the conductor bears.
 */
export function energyNote({ device, cable }: WayStudy): string | undefined {
  if (device?.family !== "breaker" || !device.rating || cable?.cpc === undefined) return undefined;
  if (cable.cpc >= (selectedProtective(cable.line)?.value ?? 0)) return undefined;
  const insulation = cable.insulation === 90 ? "ts90" : "pvc70";
  const k = adiabaticFactor({ use: "incorporated", material: "copper", insulation, csa: cable.cpc });
  if (!k) return undefined;
  const bears = withstand(cable.cpc, k);
  const { curve, rating, breaking } = device;
  const most =
    curve && curve !== "D" && breaking !== undefined
      ? letThrough({ curve, rating, capacity: breaking, limitingClass })
      : undefined;
  if (most && most.value <= bears.value) return undefined;
  return `Where the fault current is high the maker's let-through energy of the breaker must stay below the ${plain(bears.value, 0)} A²s this protective conductor bears.`;
}
