import {
  boardLinks,
  type CircuitFault,
  type CircuitRuns,
  type Conductor,
  conductorNetwork,
  type Links,
  legEnd,
  legStart,
  nodeOf,
  pinOf,
} from "./circuit-network.ts";
import type { Resistor } from "./network.ts";
import type { Port } from "./network-survey.ts";

/** How the board's end is made up for a reading. */
export type BoardLinks = Links | "last" | "none";

/** One thing a meter can be put to: an end-to-end reading, a point in a round, or a conductor to a point by a long lead. */
export type Measurement =
  | { readonly kind: "ends"; readonly conductor: Conductor }
  | { readonly kind: "round"; readonly other: "neutral" | "cpc"; readonly place: string }
  /** Any two pins of a point, line and another conductor joined at the board. */
  | {
      readonly kind: "pins";
      readonly pair: readonly [Conductor, Conductor];
      readonly joined: "neutral" | "cpc";
      readonly place: string;
    }
  /** A point in a round, on the ends of its own cable: the point itself is taken off. */
  | { readonly kind: "tails"; readonly other: "neutral" | "cpc"; readonly place: string }
  | { readonly kind: "lead"; readonly conductor: Conductor; readonly place: string }
  /** Line to line of one leg, the ring taken apart at a point. */
  | { readonly kind: "half"; readonly conductor: Conductor; readonly place: string };

export function portOf(measurement: Measurement): Port {
  const { kind } = measurement;
  if (kind === "ends")
    return { from: nodeOf(measurement.conductor, legStart), to: nodeOf(measurement.conductor, legEnd) };
  if (kind === "round" || kind === "tails")
    return { from: pinOf("line", measurement.place), to: pinOf(measurement.other, measurement.place) };
  if (kind === "pins")
    return { from: pinOf(measurement.pair[0], measurement.place), to: pinOf(measurement.pair[1], measurement.place) };
  const end = kind === "half" ? nodeOf : pinOf;
  return {
    from: nodeOf(measurement.conductor, legStart),
    to: end(measurement.conductor, measurement.place),
  };
}

/** The resistors a measurement is made on. */
export function networkFor(
  circuit: CircuitRuns,
  measurement: Measurement,
  faults: readonly CircuitFault[] = [],
  links: BoardLinks = "opposite",
): Resistor[] {
  const { kind } = measurement;
  const left = kind === "tails" ? faults.filter((fault) => !isOfPins(fault, measurement.place)) : faults;
  const all = (["line", "neutral", "cpc"] as const).flatMap((conductor) => conductorNetwork(circuit, conductor, left));
  if (measurement.kind === "round" || measurement.kind === "tails")
    return [...all, ...boardLinks(circuit, measurement.other, links)];
  if (measurement.kind === "pins") return [...all, ...boardLinks(circuit, measurement.joined, links)];
  if (measurement.kind !== "half") return all;
  return conductorNetwork(takenApart(circuit, measurement.place), measurement.conductor, faults);
}

/** What is taken off with the point itself. */
const isOfPins = (fault: CircuitFault, place: string): boolean =>
  (fault.kind === "contact" || fault.kind === "swapped") && fault.place === place;

/** The ring with its two cables at a point apart; what hangs there stays on the first. */
function takenApart(circuit: CircuitRuns, place: string): CircuitRuns {
  const legs = circuit.legs.map((leg) =>
    leg.main && leg.from === place ? { ...leg, from: `${place} far side` } : leg,
  );
  return { ...circuit, legs };
}
