import type { CircuitFault, CircuitLeg, CircuitRuns, Conductor, Links } from "../../server/calc/circuit-network.ts";
import { legEnd, legStart } from "../../server/calc/circuit-network.ts";
import type { Measurement } from "../../server/calc/circuit-readings.ts";
import { readingOf } from "./reading.ts";

/** A ring as it lies: m of cable round, Ω per metre of each conductor, the sockets' distances from the board in m. */
export interface Ring {
  readonly length: number;
  readonly perMetre: Readonly<Record<Conductor, number>>;
  /** In order round the ring. */
  readonly points: readonly number[];
  readonly faults?: readonly RingFault[];
  readonly links?: Links;
}

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
interface RingReadings {
  readonly r1: number;
  readonly rn: number;
  readonly r2: number;
  readonly lineNeutral: readonly number[];
  readonly lineCpc: readonly number[];
}

/** The ring with its spurs as the product draws a circuit, and the rest of its faults beside it. */
export function circuitOf({ length, perMetre, points, faults = [] }: Ring): {
  readonly circuit: CircuitRuns;
  readonly faults: readonly CircuitFault[];
} {
  const stops = [...points, length];
  const round = stops.map((stop, at): CircuitLeg => {
    const to = at < points.length ? placeOf(at) : legEnd;
    return { from: at === 0 ? legStart : placeOf(at - 1), to, length: stop - (stops[at - 1] ?? 0), main: true };
  });
  const spurs = faults
    .filter((fault) => fault.kind === "spur")
    .map(({ from, length: metres }, at): CircuitLeg => {
      return { from: placeOf(from), to: placeOf(points.length + at), length: metres, main: false };
    });
  const places = [...points, ...spurs].map((_, at) => placeOf(at));
  return { circuit: { closed: true, legs: [...round, ...spurs], places, perMetre }, faults: faults.flatMap(faultOf) };
}

/** What the meter is put to, in the order of the test. */
export function measurementsOf({ places }: CircuitRuns): Readonly<Record<keyof RingReadings, readonly Measurement[]>> {
  const ends = (conductor: Conductor): Measurement[] => [{ kind: "ends", conductor }];
  const round = (other: "neutral" | "cpc") => places.map((place): Measurement => ({ kind: "round", other, place }));
  return {
    r1: ends("line"),
    rn: ends("neutral"),
    r2: ends("cpc"),
    lineNeutral: round("neutral"),
    lineCpc: round("cpc"),
  };
}

/** The readings a ring would give, faults and slips of the test included, solved as a network. */
export function ringReadings(ring: Ring): RingReadings {
  const { circuit, faults } = circuitOf(ring);
  const measurements = measurementsOf(circuit);
  const read = (name: keyof RingReadings): number[] =>
    measurements[name].map((measurement) => readingOf(circuit, measurement, faults, ring.links));
  const [r1 = Number.NaN, rn = Number.NaN, r2 = Number.NaN] = [...read("r1"), ...read("rn"), ...read("r2")];
  return { r1, rn, r2, lineNeutral: read("lineNeutral"), lineCpc: read("lineCpc") };
}

const placeOf = (point: number): string => `p${point}`;

function faultOf(fault: RingFault): CircuitFault[] {
  switch (fault.kind) {
    case "spur":
      return [];
    case "open":
      return [{ kind: "open", conductors: fault.conductors, leg: fault.stretch }];
    case "joint":
      return [{ kind: "joint", conductor: fault.conductor, leg: fault.stretch, ohms: fault.ohms }];
    case "contact":
      return [{ kind: "contact", conductor: fault.conductor, place: placeOf(fault.point), ohms: fault.ohms }];
    case "swapped":
      return [{ kind: "swapped", pair: fault.pair, place: placeOf(fault.point) }];
    case "bridge":
      return [{ kind: "bridge", from: placeOf(fault.from), to: placeOf(fault.to), length: fault.length }];
  }
}
