import type { CircuitFault, CircuitLeg, CircuitRuns } from "../../server/calc/circuit-network.ts";
import { legEnd, legStart } from "../../server/calc/circuit-network.ts";
import type { BoardLinks, Measurement } from "../../server/calc/circuit-readings.ts";
import { round } from "../../server/calc/result.ts";
import { type Sheet, type SheetReading, usualAccuracy } from "../../server/diagnosis/sheet.ts";
import { readingOf } from "../helpers/reading.ts";

export type Links = {
  readonly neutral?: BoardLinks;
  readonly cpc?: BoardLinks;
};

export const flat25 = { line: 0.00741, neutral: 0.00741, cpc: 0.0121 };
export const sizes25 = { line: 2.5, neutral: 2.5, cpc: 1.5 };

/** A ring of points s1, s2, … at their metres from the board, with spurs as [from, name, metres]. */
export function ringOf(
  length: number,
  points: readonly number[],
  spurs: readonly (readonly [string, string, number])[] = [],
  perMetre = flat25,
): CircuitRuns {
  const names = points.map((_, index) => `s${index + 1}`);
  const stops = [...names.map((name, index) => [name, points[index] ?? 0] as const), [legEnd, length] as const];
  const legs: CircuitLeg[] = stops.map(([to, along], index) => ({
    from: stops[index - 1]?.[0] ?? legStart,
    to,
    length: along - (stops[index - 1]?.[1] ?? 0),
    main: true,
  }));
  for (const [from, to, metres] of spurs) legs.push({ from, to, length: metres, main: false });
  return {
    closed: true,
    legs,
    places: [...names, ...spurs.map(([, name]) => name)],
    perMetre,
  };
}

/** A radial of points p1, p2, … by the lengths between them, with branches as [from, name, metres]. */
export function radialOf(
  lengths: readonly number[],
  branches: readonly (readonly [string, string, number])[] = [],
  perMetre = flat25,
): CircuitRuns {
  const legs: CircuitLeg[] = lengths.map((length, index) => ({
    from: index === 0 ? legStart : `p${index}`,
    to: `p${index + 1}`,
    length,
    main: true,
  }));
  for (const [from, to, metres] of branches) legs.push({ from, to, length: metres, main: false });
  return { closed: false, legs, places: legs.map(({ to }) => to), perMetre };
}

export function measurementsOf({ closed, places }: CircuitRuns): [string, Measurement][] {
  const ends: [string, Measurement][] = [
    ["r1", { kind: "ends", conductor: "line" }],
    ["rn", { kind: "ends", conductor: "neutral" }],
    ["r2", { kind: "ends", conductor: "cpc" }],
  ];
  const each = (make: (place: string) => [string, Measurement]) => places.map(make);
  return [
    ...(closed ? ends : []),
    ...(closed
      ? each((place) => [`L-N at ${place}`, { kind: "round", other: "neutral", place }])
      : each((place) => [`R2 at ${place}`, { kind: "lead", conductor: "cpc", place }])),
    ...each((place) => [`L-E at ${place}`, { kind: "round", other: "cpc", place }]),
  ];
}

const offScale = 99.9;

/** One reading as a meter with two decimals writes it. */
export function written(name: string, measurement: Measurement, ohms: number): SheetReading {
  return ohms > offScale
    ? { name, measurement, value: offScale, open: true, offScale: true }
    : { name, measurement, value: round(ohms, 2), open: false, offScale: false };
}

export interface Simulated {
  readonly faults?: readonly CircuitFault[];
  readonly links?: Links;
  /** What the meter makes of the true value. */
  readonly meter?: (ohms: number) => number;
}

/** The sheet of the circuit as drawn, with the readings of the circuit as it is. */
export function sheetOf(
  drawn: CircuitRuns,
  { faults = [], links = {}, meter = (ohms) => ohms }: Simulated = {},
  actual: CircuitRuns = drawn,
  sizes = sizes25,
): Sheet {
  const readings = measurementsOf(drawn).map(([name, measurement]) => {
    const joined = measurement.kind === "round" ? links[measurement.other] : undefined;
    return written(name, measurement, meter(readingOf(actual, measurement, faults, joined)));
  });
  return {
    circuit: { ...drawn, drawn: true, lengthKnown: true },
    sizes,
    readings,
    accuracy: usualAccuracy,
  };
}
