import type { CircuitFault, CircuitRuns } from "../../server/calc/circuit-network.ts";
import { type BoardLinks, type Measurement, networkFor, portOf } from "../../server/calc/circuit-readings.ts";
import { resistanceBetween } from "./resistance.ts";

/** What the meter would show, Ω: solved afresh, as a judge of what is solved once for all readings. */
export function readingOf(
  circuit: CircuitRuns,
  measurement: Measurement,
  faults: readonly CircuitFault[] = [],
  links: BoardLinks = "opposite",
): number {
  const { from, to } = portOf(measurement);
  return resistanceBetween(networkFor(circuit, measurement, faults, links), from, to);
}
