/** The one test that best distinguishes two explanations, by what each predicts it would read. */

import type { Conductor } from "../calc/circuit-network.ts";
import { type CircuitFault, type CircuitRuns, conductors, legEnd, legStart } from "../calc/circuit-network.ts";
import { type Measurement, networkFor, portOf } from "../calc/circuit-readings.ts";
import { type Survey, surveyOf } from "../calc/network-survey.ts";
import { ohms } from "../calc/result.ts";
import { eachInSteps, type Steps } from "../memo/steps.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import { conductorWords } from "./conductors.ts";
import type { FittedHypothesis, Kind } from "./fitted.ts";
import type { Hypothesis } from "./hypothesis.ts";
import { limitOf, type Sheet } from "./sheet.ts";

export interface NextTest {
  readonly sentence: string;
  /** How far apart the two predictions lie, in accuracies of the meter. */
  readonly telling: number;
}

/** Beyond this, a simpler test is worth more than a clearer one. */
const enough = 8;

/** Of so many the two readings are worked out in about a millisecond. */
const testsAtOnce = 4;

export function* nextTest(sheet: Sheet, kinds: readonly Kind[]): Steps<NextTest | undefined> {
  const [first, second] = leaders(kinds);
  const simple = first && byHand(sheet, kinds, first);
  if (simple) return simple;
  if (!first || !second) return undefined;
  const [one, other] = [tester(sheet, first), tester(sheet, second)];
  const pulled = [...new Set([first, second].flatMap(pinsOf))];
  const tests = yield* eachInSteps(feasible(sheet.circuit, pulled), testsAtOnce, (measurement) => {
    const values = [one(measurement), other(measurement)] as const;
    return { measurement, values, telling: tellingOf(sheet, ...values) };
  });
  const most = Math.min(enough, Math.max(...tests.map(({ telling }) => telling)));
  const clearest = tests.filter(({ telling }) => telling >= most - 1e-6);
  const alike = clearest.filter(({ measurement }) => sameKind(measurement, clearest[0]?.measurement));
  // Where one fault could be at many places, the test in the middle leaves the fewest of them.
  const best = first.hypothesis.kind === second.hypothesis.kind ? alike[Math.floor(alike.length / 2)] : alike[0];
  if (!best || best.telling < diagnosisPractice.telling.value) return lookAt(kinds);
  const [left, right] = best.values.map(shown);
  const verdict = isNamed(kinds[1], first, second)
    ? `${left} supports the first explanation, ${right} ${otherWords(first, second)}`
    : `${left} supports it, ${right} rules it out`;
  return {
    sentence: `${instruction(sheet, best.measurement)}: ${verdict}.`,
    telling: best.telling,
  };
}

/**
 * What a tester does before any reading: an accessory that reads open comes off its box in any case, and where an end is
 * not found at the board the legs are sought again.
 */
function byHand(
  { circuit }: Sheet,
  kinds: readonly Kind[],
  { hypothesis, size }: FittedHypothesis,
): NextTest | undefined {
  const likely = kinds.filter(({ weight }) => weight >= diagnosisPractice.leastWeight.value);
  const [point] = pointsAt(hypothesis.state(size).faults);
  if (point !== undefined && likely.every(({ best }) => pointsAt(best.hypothesis.state(best.size).faults)[0] === point))
    return {
      sentence: `Take ${point} off its box and look: each conductor in its own terminal, none loose, and from this circuit.`,
      telling: enough,
    };
  if (hypothesis.links && likely.length === 1) return { sentence: remade(circuit, hypothesis.links), telling: enough };
  const [open] = hypothesis.state(size).faults.flatMap((fault) => (fault.kind === "open" ? [fault] : []));
  const [kind] = likely;
  if (!circuit.closed || !open || !kind || likely.length > 1 || open.conductors.length > 1) return undefined;
  if (![kind.best, ...kind.alike].every((one) => isAtBoard(circuit, one))) return undefined;
  const which = conductorWords[open.conductors[0] ?? "line"];
  return {
    sentence: `At the board, test each ${which} leg of this ring for continuity with every other ${which} end there: its mate may be in another terminal, or with another ring.`,
    telling: enough,
  };
}

/** The joints at the board made anew, and what the points then show. */
function remade({ closed }: Pick<CircuitRuns, "closed">, links: NonNullable<Hypothesis["links"]>): string {
  const others = (["neutral", "cpc"] as const).filter((other) => links[other] !== undefined);
  const each = others.map((other) => conductorWords[other]).join(", then ");
  return closed
    ? `At the board join the line of each leg to the ${each} of the other leg, both joints made, and read the points again: what they then show counts.`
    : `Join line and ${each} at the board and read the points again: what they then show counts.`;
}

const isAtBoard = ({ legs }: Pick<CircuitRuns, "legs">, { hypothesis, size }: FittedHypothesis): boolean =>
  hypothesis.state(size).faults.every((fault) => {
    const leg = "leg" in fault ? legs[fault.leg] : undefined;
    return leg?.from === legStart || leg?.to === legEnd;
  });

/** Points that read open for something at the point itself. */
const pointsAt = (faults: readonly CircuitFault[]): string[] =>
  faults.flatMap((fault) =>
    fault.kind === "swapped" || (fault.kind === "contact" && !Number.isFinite(fault.ohms)) ? [fault.place] : [],
  );

/** Points at which an explanation has something wrong between the cable and the pins. */
const pinsOf = ({ hypothesis, size }: FittedHypothesis): string[] =>
  hypothesis
    .state(size)
    .faults.flatMap((fault) => (fault.kind === "contact" || fault.kind === "swapped" ? [fault.place] : []));

/** Where no reading would tell, the eye may: at the place the likeliest explanation names. */
function lookAt([first, second]: readonly Kind[]): NextTest | undefined {
  if (!first || !second || second.weight < diagnosisPractice.leastWeight.value) return undefined;
  const where = [first, second].map(({ best }) => best.hypothesis.where).find((one) => one !== "");
  if ([first, second].some(({ kind }) => kind.startsWith("size-")))
    return { sentence: "Inspect the conductor sizes at the board and at a point.", telling: 0 };
  const [, point] = /^at (\S+)$/.exec(where ?? "") ?? [];
  const [, from, to] = /^between (.+) and (.+)$/.exec(where ?? "") ?? [];
  const sentence = point
    ? `Take ${point} off its box, inspect its connections, make them good and read it again.`
    : from
      ? `Open ${from} and ${to}, inspect the connections, make them good and read again.`
      : "Null the leads and make these readings again, each written down before the next.";
  return { sentence, telling: 0 };
}

/** The two leading kinds; or, where no other kind has any weight, the two ends of where the first could be. */
function leaders([first, second]: readonly Kind[]): readonly (FittedHypothesis | undefined)[] {
  const questionable = second !== undefined && second.weight >= diagnosisPractice.leastWeight.value;
  if (!first || questionable || first.alike.length === 0) return [first?.best, second?.best];
  const inOrder = [first.best, ...first.alike].sort((one, other) => one.place - other.place);
  const [start, end] = [inOrder[0], inOrder.at(-1)];
  return [first.best, first.best === end ? start : end];
}

const sameKind = (one: Measurement, other: Measurement | undefined): boolean =>
  one.kind === other?.kind &&
  ("conductor" in one && "conductor" in other ? one.conductor === other.conductor : one.kind !== "ends");

/** An explanation too unlikely to be listed is not referred to as the second. */
const isNamed = (second: Kind | undefined, one: FittedHypothesis, other: FittedHypothesis): boolean =>
  one.hypothesis.kind === other.hypothesis.kind ||
  (second !== undefined && second.weight >= diagnosisPractice.leastWeight.value);

function otherWords(first: FittedHypothesis, second: FittedHypothesis): string {
  const { kind, where } = second.hypothesis;
  if (kind !== first.hypothesis.kind) return "the second";
  return where === "" || where === first.hypothesis.where ? "the same elsewhere" : `the fault being ${where}`;
}

const shown = (value: number): string => (Number.isFinite(value) ? `about ${ohms(value)}` : "an open reading");

function tellingOf({ accuracy }: Sheet, left: number, right: number): number {
  if (!Number.isFinite(left) || !Number.isFinite(right)) return left === right ? 0 : 100;
  return Math.abs(left - right) / limitOf(accuracy, Math.max(left, right));
}

/** Readings of the circuit as a hypothesis has it. Each make-up of the board's end is solved once for all points. */
function tester(
  { circuit }: Sheet,
  { hypothesis, fitted, size }: FittedHypothesis,
): (measurement: Measurement) => number {
  const { faults, perMetre = circuit.perMetre } = hypothesis.state(size);
  const { scale } = fitted;
  const actual: CircuitRuns = {
    ...circuit,
    perMetre: {
      line: perMetre.line * scale,
      neutral: perMetre.neutral * scale,
      cpc: perMetre.cpc * scale,
    },
  };
  const kept = new Map<string, Survey>();
  return (measurement) => {
    const key = makeUp(measurement);
    const survey = kept.get(key) ?? surveyOf(networkFor(actual, measurement, faults));
    kept.set(key, survey);
    const port = survey.place(portOf(measurement));
    return port.apart ? Number.POSITIVE_INFINITY : survey.transfer(port, port);
  };
}

function makeUp(measurement: Measurement): string {
  const { kind } = measurement;
  if (kind === "half") return `half ${measurement.conductor} ${measurement.place}`;
  if (kind === "round") return measurement.other;
  if (kind === "tails") return `tails ${measurement.other} ${measurement.place}`;
  return kind === "pins" ? measurement.joined : "free";
}

/** Tests that can be made, the simple ones first. */
function feasible({ closed, places, legs }: CircuitRuns, pulled: readonly string[]): Measurement[] {
  const onMain = legs.filter(({ main, to }) => main && to !== legEnd).map(({ to }) => to);
  const round = (other: "neutral" | "cpc") => places.map((place): Measurement => ({ kind: "round", other, place }));
  const pins = (pair: readonly [Conductor, Conductor], joined: "neutral" | "cpc") =>
    places.map((place): Measurement => ({ kind: "pins", pair, joined, place }));
  const each = (make: (conductor: Conductor) => Measurement[]) => conductors.flatMap(make);
  return [
    ...(closed ? each((conductor) => [{ kind: "ends", conductor }]) : []),
    ...round("neutral"),
    ...round("cpc"),
    ...pins(["line", "cpc"], "neutral"),
    ...pins(["neutral", "cpc"], "neutral"),
    ...pins(["neutral", "cpc"], "cpc"),
    ...pulled.flatMap((place) => [
      { kind: "tails", other: "neutral", place } as const,
      { kind: "tails", other: "cpc", place } as const,
    ]),
    ...each((conductor) => places.map((place) => ({ kind: "lead", conductor, place }))),
    ...(closed ? each((conductor) => onMain.map((place) => ({ kind: "half", conductor, place }))) : []),
  ];
}

const conductorShort: Readonly<Record<Conductor, string>> = {
  line: "line",
  neutral: "neutral",
  cpc: "earth",
};
const endNames: Readonly<Record<Conductor, string>> = {
  line: "r1",
  neutral: "rn",
  cpc: "r2",
};

function instruction({ circuit, readings }: Sheet, measurement: Measurement): string {
  const { closed } = circuit;
  const made = readings.some((reading) => sameAs(reading.measurement, measurement));
  const again = made ? " again" : "";
  const nulled = made ? "Null the leads and measure" : "Measure";
  switch (measurement.kind) {
    case "ends":
      return `${nulled} ${endNames[measurement.conductor]}, the ${conductorWords[measurement.conductor]} end to end,${again}`.replace(
        /,$/,
        "",
      );
    case "round": {
      const joined = closed ? "Cross-connect" : "Join";
      const remade = made && closed ? "Null the leads, make the cross-connection of" : joined;
      const other = conductorWords[measurement.other];
      const name = measurement.other === "neutral" ? "L-N" : "L-E";
      return `${remade} line and ${other} at the board${made && closed ? " anew" : ""}, and read ${name} at ${measurement.place}${again}`;
    }
    case "pins": {
      const [one, other] = measurement.pair;
      return `With line and ${conductorWords[measurement.joined]} ${closed ? "cross-connected" : "joined"} at the board, read ${conductorShort[one]} to ${conductorShort[other]} at ${measurement.place}`;
    }
    case "tails": {
      const other = conductorWords[measurement.other];
      const name = measurement.other === "neutral" ? "L-N" : "L-E";
      return `With line and ${other} ${closed ? "cross-connected" : "joined"} at the board, take ${measurement.place} off and read ${name} on the ends of its cable`;
    }
    case "lead":
      return closed
        ? `With the legs free at the board, measure the ${conductorWords[measurement.conductor]} from the first leg to ${measurement.place} by a long lead`
        : `${nulled} the ${conductorWords[measurement.conductor]} from the board to ${measurement.place} by a long lead${again}`;
    case "half":
      return `Take the ring apart at ${measurement.place} and measure the ${conductorWords[measurement.conductor]} from the first leg at the board to it`;
  }
}

function sameAs(one: Measurement, other: Measurement): boolean {
  if (one.kind !== other.kind) return false;
  if ("place" in one && "place" in other && one.place !== other.place) return false;
  if ("conductor" in one && "conductor" in other && one.conductor !== other.conductor) return false;
  return one.kind !== "round" || other.kind !== "round" || one.other === other.other;
}
