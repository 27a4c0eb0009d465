import type { CircuitRuns, Conductor } from "./circuit-network.ts";
import { legEnd, legStart } from "./circuit-network.ts";
import type { BoardLinks, Measurement } from "./circuit-readings.ts";

/** Where a place lies: metres along the main run or round the ring, and metres of branch from there. */
export interface Standing {
  readonly along: number;
  readonly branch: number;
}

/** Metres of the ring, or of the main run, and where every place stands. */
export function standings({ legs }: Pick<CircuitRuns, "legs">): {
  readonly length: number;
  readonly of: ReadonlyMap<string, Standing>;
} {
  const of = new Map<string, Standing>([[legStart, { along: 0, branch: 0 }]]);
  let length = 0;
  for (const leg of legs) {
    const from = of.get(leg.from) ?? { along: 0, branch: 0 };
    if (leg.main) length = from.along + leg.length;
    const { along, branch } = from;
    of.set(leg.to, leg.main ? { along: along + leg.length, branch } : { along, branch: branch + leg.length });
  }
  of.delete(legStart);
  of.delete(legEnd);
  return { length, of };
}

/**
 * What a sound circuit reads, Ω, by the formulas of the trade instead of a network: two paths in parallel round a ring,
 * branches in series. Equal to the network's answer.
 */
export function soundReading(
  { closed, perMetre }: Pick<CircuitRuns, "closed" | "perMetre">,
  { length, of }: ReturnType<typeof standings>,
  measurement: Measurement,
  links: BoardLinks = "opposite",
): number {
  if (measurement.kind === "ends") return closed ? length * perMetre[measurement.conductor] : Number.POSITIVE_INFINITY;
  const standing = of.get(measurement.place) ?? { along: 0, branch: 0 };
  const { along, branch } = standing;
  if (measurement.kind === "lead" || measurement.kind === "half")
    return (along + (measurement.kind === "half" ? 0 : branch)) * perMetre[measurement.conductor];
  if (measurement.kind === "pins") return Number.NaN;
  const other: Conductor = measurement.other;
  const sum = perMetre.line + perMetre[other];
  if (links === "none") return Number.POSITIVE_INFINITY;
  if (!closed) return (along + branch) * sum;
  const x = along / length;
  const [first, second] = [length * perMetre.line, length * perMetre[other]];
  const one = x * first + (1 - x) * second;
  const last = (1 - x) * first + x * second;
  const spur = branch * sum;
  if (links === "one") return one + spur;
  if (links === "last") return last + spur;
  const whole = first + second;
  return (links === "same-leg" ? x * (1 - x) * whole : (one * last) / whole) + spur;
}
