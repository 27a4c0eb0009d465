import type { Resistor } from "./network.ts";
import { resistanceBetween } from "./network.ts";

export type Conductor = "line" | "neutral" | "cpc";

/** A ring as it lies: m of cable round, Ω per metre of each conductor, the sockets' distances from the board in m. */
export interface Ring {
  readonly length: number;
  readonly perMetre: Readonly<Record<Conductor, number>>;
  /** In order round the ring. */
  readonly points: readonly number[];
  readonly faults?: readonly RingFault[];
  /** How the legs are joined at the board for the second and third rounds. */
  readonly links?: Links;
}

/** Opposite ends joined, as the test wants; both ends of one leg joined; or only one of the two joints made. */
export type Links = "opposite" | "same-leg" | "one";

/**
 * What departs from a plain ring. Stretches are counted from the board: 0 leads to the first point. Points count from 0;
 * spurs take the numbers after them, in the order given. Lengths in m.
 */
export type RingFault =
  | { readonly kind: "open"; readonly conductors: readonly Conductor[]; readonly stretch: number }
  | { readonly kind: "joint"; readonly conductor: Conductor; readonly stretch: number; readonly ohms: number }
  | { readonly kind: "contact"; readonly conductor: Conductor; readonly point: number; readonly ohms: number }
  | { readonly kind: "spur"; readonly from: number; readonly length: number }
  | { readonly kind: "bridge"; readonly from: number; readonly to: number; readonly length: number }
  | { readonly kind: "swapped"; readonly pair: readonly [Conductor, Conductor]; readonly point: number };

/** What the three steps of the ring test would show, Ω; a reading for each point, then for each spur. */
export interface RingReadings {
  readonly r1: number;
  readonly rn: number;
  readonly r2: number;
  readonly lineNeutral: readonly number[];
  readonly lineCpc: readonly number[];
}

const conductors: readonly Conductor[] = ["line", "neutral", "cpc"];

/** The readings a ring would give, faults and slips of the test included, solved as a network. */
export function ringReadings(ring: Ring): RingReadings {
  const network = ringNetwork(ring);
  const ends = (conductor: Conductor) => resistanceBetween(network, `${conductor} start`, `${conductor} end`);
  const places = [...ring.points.keys(), ...spurs(ring).map((_, index) => ring.points.length + index)];
  const round = (other: Conductor) => {
    const linked = [...network, ...linksOf(other, ring.links ?? "opposite")];
    return places.map((place) => resistanceBetween(linked, `pin line ${place}`, `pin ${other} ${place}`));
  };
  return {
    r1: ends("line"),
    rn: ends("neutral"),
    r2: ends("cpc"),
    lineNeutral: round("neutral"),
    lineCpc: round("cpc"),
  };
}

/** The ring with its legs free at the board. Nodes: "line start", "line 0", …, "line end", and "pin line 0" at a socket. */
export function ringNetwork(ring: Ring): Resistor[] {
  return conductors.flatMap((conductor) => [
    ...stretches(ring, conductor),
    ...branches(ring, conductor),
    ...pins(ring, conductor),
  ]);
}

/** The joints at the board between line and another conductor. */
export function linksOf(other: Conductor, links: Links): Resistor[] {
  const joint = (from: string, to: string): Resistor => ({ from, to, ohms: 0 });
  if (links === "same-leg") return [joint("line start", `${other} start`), joint("line end", `${other} end`)];
  const first = joint("line start", `${other} end`);
  return links === "one" ? [first] : [first, joint("line end", `${other} start`)];
}

function stretches(ring: Ring, conductor: Conductor): Resistor[] {
  const places = [0, ...ring.points, ring.length];
  const nodes = ["start", ...ring.points.keys(), "end"].map((place) => `${conductor} ${place}`);
  return nodes.slice(1).map((to, stretch) => {
    const length = (places[stretch + 1] ?? 0) - (places[stretch] ?? 0);
    const ohms = isOpen(ring, conductor, stretch)
      ? Number.POSITIVE_INFINITY
      : length * ring.perMetre[conductor] + jointOhms(ring, conductor, stretch);
    return { from: nodes[stretch] ?? "", to, ohms };
  });
}

function isOpen({ faults = [] }: Ring, conductor: Conductor, stretch: number): boolean {
  return faults.some(
    (fault) => fault.kind === "open" && fault.stretch === stretch && fault.conductors.includes(conductor),
  );
}

function jointOhms({ faults = [] }: Ring, conductor: Conductor, stretch: number): number {
  return faults.reduce((sum, fault) => {
    const here = fault.kind === "joint" && fault.conductor === conductor && fault.stretch === stretch;
    return here ? sum + fault.ohms : sum;
  }, 0);
}

/** Spurs and cables that bridge the ring: each carries all three conductors. */
function branches(ring: Ring, conductor: Conductor): Resistor[] {
  const cable = (from: number, to: number, length: number): Resistor => ({
    from: `${conductor} ${from}`,
    to: `${conductor} ${to}`,
    ohms: length * ring.perMetre[conductor],
  });
  const bridges = (ring.faults ?? []).filter((fault) => fault.kind === "bridge");
  return [
    ...spurs(ring).map(({ from, length }, index) => cable(from, ring.points.length + index, length)),
    ...bridges.map(({ from, to, length }) => cable(from, to, length)),
  ];
}

function spurs({ faults = [] }: Ring) {
  return faults.filter((fault) => fault.kind === "spur");
}

/** From the terminals of each socket to its pins: a poor contact lies between, or two conductors change places. */
function pins(ring: Ring, conductor: Conductor): Resistor[] {
  const count = ring.points.length + spurs(ring).length;
  return Array.from({ length: count }, (_, place) => ({
    from: `${wiredTo(ring, conductor, place)} ${place}`,
    to: `pin ${conductor} ${place}`,
    ohms: contactOhms(ring, conductor, place),
  }));
}

function wiredTo({ faults = [] }: Ring, conductor: Conductor, place: number): Conductor {
  for (const fault of faults) {
    if (fault.kind !== "swapped" || fault.point !== place) continue;
    const [one, other] = fault.pair;
    if (conductor === one) return other;
    if (conductor === other) return one;
  }
  return conductor;
}

function contactOhms({ faults = [] }: Ring, conductor: Conductor, place: number): number {
  return faults.reduce((sum, fault) => {
    const here = fault.kind === "contact" && fault.conductor === conductor && fault.point === place;
    return here ? sum + fault.ohms : sum;
  }, 0);
}
