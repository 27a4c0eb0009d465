import type { Resistor } from "./network.ts";

export type Conductor = "line" | "neutral" | "cpc";

/** Opposite ends joined, as the ring test wants; both ends of one leg joined; or only one of the two joints made. */
export type Links = "opposite" | "same-leg" | "one";

/** A leg of cable from place to place, m. Of a ring, the first leg begins at `legStart` and the last ends at `legEnd`. */
export interface CircuitLeg {
  readonly from: string;
  readonly to: string;
  readonly length: number;
  /** Whether it lies on the ring or the main run, not on a spur or branch. */
  readonly main: boolean;
}

/** Any circuit as it lies, with Ω per metre of each conductor at the temperature of the test. */
export interface CircuitRuns {
  readonly closed: boolean;
  readonly legs: readonly CircuitLeg[];
  readonly places: readonly string[];
  readonly perMetre: Readonly<Record<Conductor, number>>;
}

/** The free ends at the board: of a radial, or of one leg of a ring; and of the other leg. Names of places have no spaces. */
export const legStart = "board first leg";
export const legEnd = "board last leg";

export const conductors: readonly Conductor[] = ["line", "neutral", "cpc"];

/** What departs from the circuit as it is drawn. Legs are counted from 0. */
export type CircuitFault =
  | { readonly kind: "open"; readonly conductors: readonly Conductor[]; readonly leg: number }
  | { readonly kind: "joint"; readonly conductor: Conductor; readonly leg: number; readonly ohms: number }
  | { readonly kind: "contact"; readonly conductor: Conductor; readonly place: string; readonly ohms: number }
  /** A cable between two places. */
  | { readonly kind: "bridge"; readonly from: string; readonly to: string; readonly length: number }
  /** Metalwork between two places of the protective conductor. */
  | { readonly kind: "metal"; readonly from: string; readonly to: string; readonly ohms: number }
  /** The point hangs on so much more cable than is drawn. */
  | { readonly kind: "spur"; readonly place: string; readonly length: number }
  | { readonly kind: "swapped"; readonly pair: readonly [Conductor, Conductor]; readonly place: string };

export const nodeOf = (conductor: Conductor, place: string): string => `${conductor} ${place}`;
export const pinOf = (conductor: Conductor, place: string): string => `pin ${conductor} ${place}`;

/** The least length of a leg, m: one without length would make its two places one. */
const least = 1e-3;

export const legOhms = ({ legs, perMetre }: CircuitRuns, leg: number, conductor: Conductor): number =>
  Math.max(legs[leg]?.length ?? 0, least) * perMetre[conductor];

/** One conductor with its ends free at the board, faults included. */
export function conductorNetwork(
  circuit: CircuitRuns,
  conductor: Conductor,
  faults: readonly CircuitFault[] = [],
): Resistor[] {
  const { legs, places, perMetre } = circuit;
  const cables = legs.map(({ from, to }, leg) => ({
    from: nodeOf(conductor, from),
    to: nodeOf(conductor, to),
    ohms: legOhms(circuit, leg, conductor) + addedAt(faults, conductor, leg),
  }));
  const links = faults.flatMap((fault): Resistor[] => {
    if (fault.kind !== "bridge" && (fault.kind !== "metal" || conductor !== "cpc")) return [];
    const ohms = fault.kind === "bridge" ? fault.length * perMetre[conductor] : fault.ohms;
    return [{ from: nodeOf(conductor, fault.from), to: nodeOf(conductor, fault.to), ohms }];
  });
  const pins = places.map((place) => ({
    from: nodeOf(wiredTo(faults, conductor, place), place),
    to: pinOf(conductor, place),
    ohms: pinOhms(circuit, faults, conductor, place),
  }));
  return [...cables, ...links, ...pins];
}

/** The joints at the board. A radial has only its one end. */
export function boardLinks(circuit: CircuitRuns, other: Conductor, links: Links | "last" | "none"): Resistor[] {
  const joint = (one: string, end: string): Resistor => ({
    from: nodeOf("line", one),
    to: nodeOf(other, end),
    ohms: 0,
  });
  if (links === "none") return [];
  if (!circuit.closed) return [joint(legStart, legStart)];
  if (links === "same-leg") return [joint(legStart, legStart), joint(legEnd, legEnd)];
  const first = joint(legStart, legEnd);
  const last = joint(legEnd, legStart);
  if (links === "one") return [first];
  return links === "last" ? [last] : [first, last];
}

/** What a fault adds to a leg, Ω: a joint, or a break. */
function addedAt(faults: readonly CircuitFault[], conductor: Conductor, leg: number): number {
  return faults.reduce((sum, fault) => {
    if (fault.kind === "open" && fault.leg === leg && fault.conductors.includes(conductor))
      return Number.POSITIVE_INFINITY;
    return fault.kind === "joint" && fault.leg === leg && fault.conductor === conductor ? sum + fault.ohms : sum;
  }, 0);
}

function wiredTo(faults: readonly CircuitFault[], conductor: Conductor, place: string): Conductor {
  for (const fault of faults) {
    if (fault.kind !== "swapped" || fault.place !== place) continue;
    const [one, other] = fault.pair;
    if (conductor === one) return other;
    if (conductor === other) return one;
  }
  return conductor;
}

function pinOhms(circuit: CircuitRuns, faults: readonly CircuitFault[], conductor: Conductor, place: string): number {
  return faults.reduce((sum, fault) => {
    if (fault.kind === "contact" && fault.place === place && fault.conductor === conductor) return sum + fault.ohms;
    if (fault.kind === "spur" && onSpurOf(circuit, fault.place, place))
      return sum + fault.length * circuit.perMetre[conductor];
    return sum;
  }, 0);
}

/** Whether a place is another, or hangs behind it on a branch. */
export function onSpurOf(circuit: Pick<CircuitRuns, "legs">, origin: string, place: string): boolean {
  if (place === origin) return true;
  const feed = circuit.legs.find(({ to, main }) => to === place && !main);
  return feed !== undefined && onSpurOf(circuit, origin, feed.from);
}
