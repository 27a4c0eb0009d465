/**
 * What the circuit should read before a meter is put to it: at every point, from lengths and sizes, at the temperature of
 * the test. Where the points are not drawn, the trade's arithmetic stands in, and says so.
 */
import type { Measurement } from "../calc/circuit-readings.ts";
import { greatestBy } from "../calc/compare.ts";
import { productStep, sumStep } from "../calc/reproducible.ts";
import { type Calculated, metres, milliohms, ohms, step } from "../calc/result.ts";
import { type Standing, soundReading, standings } from "../calc/sound-readings.ts";
import { boardImpedance } from "../circuit/board-impedance.ts";
import { memoByObject } from "../circuit/kept.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import type { Context } from "../model/installation.ts";
import { ringContinuity } from "../tables/ring.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { type CircuitNetwork, circuitOf, farPlace } from "./circuit-network.ts";
import { temperatureOf } from "./dead.ts";

/** What is expected at one point, Ω. Of a ring: in the two cross-connected rounds. */
export interface ExpectedPoint {
  readonly name: string;
  /** Line and protective conductor from the board to the point; of a ring, both legs in parallel. */
  readonly R1R2: Calculated | undefined;
  readonly "L-N": Calculated | undefined;
  readonly "L-E": Calculated | undefined;
  /** The protective conductor alone from the board, by a long lead; of a ring it depends on how the legs are left. */
  readonly R2: Calculated | undefined;
  /** Loop impedance on cold conductors: the board's with R1+R2. */
  readonly Zs: Calculated | undefined;
}

export interface ExpectedCircuit {
  readonly network: CircuitNetwork;
  readonly ends: { readonly r1?: Calculated; readonly rn?: Calculated; readonly r2?: Calculated };
  readonly points: readonly ExpectedPoint[];
  /** The greatest of the points to earth: what is written as R1+R2. */
  readonly R1R2: Calculated | undefined;
  /** The point that reads the most of them all to earth, and the one with the greatest loop impedance. */
  readonly highest: ExpectedPoint | undefined;
  readonly farthest: ExpectedPoint | undefined;
  /** Said beside the figures where they rest on less than the drawn runs. */
  readonly note: string | undefined;
}

/** Expectations at the temperature of the latest dead test, at 20 °C where none is noted. */
export const expectedCircuit = memoByObject((study: WayStudy): ExpectedCircuit | undefined => {
  const temperature = study.dead && temperatureOf(study.dead);
  const network = study.length ? circuitOf(study, [], temperature) : undefined;
  const spurs = study.facts.one("spurs")?.args.count.value ?? 0;
  return network && expectationsOf(network, coldBoardImpedance(study.context)?.value, spurs);
});

/** What stands at one point; a circuit whose points are not drawn has one for them all. */
export function expectedPoint(study: WayStudy, name: string): ExpectedPoint | undefined {
  const circuit = expectedCircuit(study);
  return circuit?.points.find((point) => point.name === name);
}

/** Loop impedance at a board on cold conductors: as noted there or, before it is, from the origin along the feeders. */
export function coldBoardImpedance(
  context: Context,
): { readonly value: number; readonly name: "Ze" | "Zdb" } | undefined {
  const noted = boardImpedance(context);
  if (noted) return noted;
  const [above, ...further] = context.upstream;
  if (!above?.feeder) return undefined;
  const upstream: Context = { ...context, board: above.board, upstream: further };
  const start = coldBoardImpedance(upstream);
  const feeder = feederR1R2(studyWay(above.feeder, upstream));
  return start && feeder !== undefined ? { value: start.value + feeder, name: "Zdb" } : undefined;
}

function feederR1R2(feeder: WayStudy): number | undefined {
  const circuit = expectedCircuit(feeder);
  return circuit && !circuit.network.closed && circuit.points.length === 1 ? circuit.R1R2?.value : undefined;
}

export function expectationsOf(network: CircuitNetwork, board: number | undefined, spurs = 0): ExpectedCircuit {
  const places = standings(network);
  const { sources, closed } = network;
  const at = (measurement: Measurement, conductor: "neutral" | "cpc", standing: Standing, same = false) => {
    const [line, other] = [sources.line, sources[conductor]];
    if (!line || !other) return undefined;
    const value = soundReading(network, places, measurement, same ? "same-leg" : "opposite");
    const sum = `(${milliohms(line.value)} + ${milliohms(other.value)})/m`;
    const far = metres(standing.along + standing.branch);
    const sumName = conductor === "neutral" ? "R1 + Rn" : "R1 + R2";
    const formula = closed ? (same ? "both legs in parallel" : "cross-connected, both ways round") : sumName;
    const spur = standing.branch > 0 ? `, ${metres(standing.branch)} of spur` : "";
    const where = closed
      ? `${metres(standing.along)} of ${metres(places.length)} round${spur}, ${sum}`
      : `${far} × ${sum}`;
    return {
      value,
      unit: "Ω",
      steps: [step(formula, where, ohms(value))],
      source: fromFormula(combine(line.source, other.source, ...(closed ? [ringSource] : []))),
    } satisfies Calculated;
  };
  const points = [...places.of].map(([name, standing]): ExpectedPoint => {
    const cross = (other: "neutral" | "cpc") => at({ kind: "round", other, place: name }, other, standing);
    const R1R2 = at({ kind: "round", other: "cpc", place: name }, "cpc", standing, closed);
    return {
      name,
      R1R2,
      "L-N": cross("neutral"),
      "L-E": cross("cpc"),
      R2: closed ? undefined : byLead(sources.cpc, standing),
      Zs: R1R2 && board !== undefined ? loop(board, R1R2) : undefined,
    };
  });
  const highest = greatestBy(points, (point) => point["L-E"]?.value)?.one;
  return {
    network,
    ends: closed ? endsOf(network, places.length) : {},
    points,
    R1R2: highest?.["L-E"],
    highest,
    farthest: greatestBy(points, ({ R1R2 }) => R1R2?.value)?.one,
    note: noteOf(network, spurs),
  };
}

function byLead(source: Calculated | undefined, { along, branch }: Standing): Calculated | undefined {
  if (!source) return undefined;
  const far = along + branch;
  const value = far * source.value;
  const factors: readonly (readonly [number, (value: number) => string])[] = [
    [far, metres],
    [source.value, (one) => `${milliohms(one)}/m`],
  ];
  return { value, unit: "Ω", steps: [productStep("R2", factors, [value, ohms])], source: fromFormula(source.source) };
}

const ringSource = { ref: ringContinuity.ref, standing: "computed" } as const;

function endsOf({ sources }: CircuitNetwork, length: number): ExpectedCircuit["ends"] {
  const end = (source: Calculated | undefined): Calculated | undefined => {
    if (!source) return undefined;
    const value = source.value * length;
    const steps = [
      productStep(
        "end to end",
        [
          [length, metres],
          [source.value, (one) => `${milliohms(one)}/m`],
        ],
        [value, ohms],
      ),
    ];
    return { value, unit: "Ω", steps, source: fromFormula(source.source) };
  };
  const [r1, rn, r2] = [end(sources.line), end(sources.neutral), end(sources.cpc)];
  return { ...(r1 ? { r1 } : {}), ...(rn ? { rn } : {}), ...(r2 ? { r2 } : {}) };
}

function loop(board: number, R1R2: Calculated): Calculated {
  const value = board + R1R2.value;
  const steps = [...R1R2.steps, sumStep("Zs", [board, R1R2.value], ohms, value)];
  return { ...R1R2, value, steps };
}

function noteOf({ drawn, closed, places }: CircuitNetwork, spurs: number): string | undefined {
  if (places.length === 1 && places[0] === farPlace) {
    const where = closed
      ? `at the point half way round, (r1 + r2) / 4${spurs > 0 ? "; the end of a spur reads more, by its own cable" : ""}`
      : "at the far end";
    return `Calculated from the length alone, ${where}; run lines give every point.`;
  }
  return drawn ? undefined : "The points are taken as evenly spaced; run lines give every point its own place.";
}
