/** Faults of the cable and of the points. */

import type { CircuitRuns, Conductor } from "../calc/circuit-network.ts";
import { conductors, legEnd, legStart, onSpurOf } from "../calc/circuit-network.ts";
import { metres, ohms } from "../calc/result.ts";
import { eachInSteps, type Steps } from "../memo/steps.ts";
import { conductorResistance } from "../tables/conductors.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import { conductorWords } from "./conductors.ts";
import type { Range } from "./fit.ts";
import type { Hypothesis } from "./hypothesis.ts";
import type { Predictions } from "./predictions.ts";

const practice = diagnosisPractice;
const joint: Range = {
  least: practice.jointLeast.value,
  most: practice.jointMost.value,
};
const cable: Range = {
  least: practice.cableLeast.value,
  most: practice.cableMost.value,
};
const metal: Range = {
  least: practice.metalLeast.value,
  most: practice.metalMost.value,
};
const open = Number.POSITIVE_INFINITY;

const place = (name: string): string => (name === legStart || name === legEnd ? "the board" : name);

/** Conductors that some reading has a word on. */
export const conductorsRead = ({ sheet }: Predictions): Conductor[] =>
  conductors.filter((conductor) =>
    sheet.readings.some(({ measurement }) =>
      measurement.kind === "round"
        ? conductor === "line" || conductor === measurement.other
        : "conductor" in measurement && measurement.conductor === conductor,
    ),
  );

export function* circuitFaults(predictions: Predictions): Steps<Hypothesis[]> {
  const onLegs = yield* legFaults(predictions);
  const across = yield* bridges(predictions);
  const beside = yield* metalwork(predictions);
  return [...onLegs, ...across, ...beside, ...otherSizes(predictions)];
}

/** Of so many legs, points, or pairs of them, what is tried takes about a millisecond. */
const atOnce = 2;

function* legFaults(predictions: Predictions): Steps<Hypothesis[]> {
  const { circuit } = predictions.sheet;
  const read = conductorsRead(predictions);
  const each = yield* eachInSteps(circuit.legs, atOnce, ({ from, to }, leg) => {
    const where = `between ${place(from)} and ${place(to)}`;
    const breaks = [...read.map((one) => [one]), ...(read.length > 1 ? [read] : [])].map(
      (broken): Hypothesis => ({
        kind: broken.length > 1 ? "open-all" : `open-${broken[0]}`,
        where,
        predict: predictions.changed(broken.map((conductor) => predictions.ofLeg(conductor, leg, "break"))),
        ...(broken[0] && broken.length === 1 ? { change: predictions.ofLeg(broken[0], leg, "break") } : {}),
        state: () => ({
          faults: [
            {
              kind: "open",
              conductors: broken.length > 1 ? conductors : broken,
              leg,
            },
          ],
        }),
        say: () =>
          broken.length > 1
            ? "All conductors are open: the cable is cut, or left out of a terminal,"
            : `The ${conductorWords[broken[0] ?? "line"]} is open`,
      }),
    );
    const joints = read.map(
      (conductor): Hypothesis => ({
        kind: `joint-${conductor}`,
        where,
        predict: predictions.changed([predictions.ofLeg(conductor, leg, "joint")]),
        change: predictions.ofLeg(conductor, leg, "joint"),
        range: joint,
        parameter: { name: "joint", unit: "Ω" },
        state: (size) => ({
          faults: [{ kind: "joint", conductor, leg, ohms: size }],
        }),
        say: (size) => `A poor joint of about ${ohms(size)} lies in the ${conductorWords[conductor]}`,
      }),
    );
    return [...breaks, ...joints];
  });
  return each.flat();
}

/** A cable across the ring, which makes it a figure of eight. */
function* bridges(predictions: Predictions): Steps<Hypothesis[]> {
  const { circuit } = predictions.sheet;
  if (!circuit.closed) return [];
  return yield* eachInSteps(
    apartOnMain(predictions),
    atOnce,
    ([from, to]): Hypothesis => ({
      kind: "bridge",
      where: `between ${from} and ${to}`,
      predict: predictions.changed(
        conductors.map((conductor) =>
          predictions.between(conductor, from, to, (size) => size * circuit.perMetre[conductor]),
        ),
      ),
      range: cable,
      parameter: { name: "cable", unit: "m" },
      bridge: { from, to },
      state: (size) => ({ faults: [{ kind: "bridge", from, to, length: size }] }),
      say: (size) => `A cable of about ${metres(Math.round(size))} bridges the ring`,
    }),
  );
}

/** Bonded metal beside the protective conductor: between two points of a ring, or back to the board. */
function* metalwork(predictions: Predictions): Steps<Hypothesis[]> {
  const { circuit } = predictions.sheet;
  if (!conductorsRead(predictions).includes("cpc")) return [];
  const pairs = circuit.closed ? apartOnMain(predictions) : circuit.places.map((name) => [legStart, name] as const);
  return yield* eachInSteps(
    pairs,
    atOnce,
    ([from, to]): Hypothesis => ({
      kind: "metal",
      where: `between ${place(from)} and ${place(to)}`,
      predict: predictions.changed([predictions.between("cpc", from, to, (size) => size)]),
      range: metal,
      parameter: { name: "path by metalwork", unit: "Ω" },
      state: (size) => ({ faults: [{ kind: "metal", from, to, ohms: size }] }),
      say: (size) => `Bonded metalwork of about ${ohms(size)} lies beside the protective conductor`,
    }),
  );
}

/**
 * Places on a ring between which a cable or metalwork is tried. Of more than these, some at equal distances: every two of
 * them are tried, and where a path ends is seen no nearer than from one point to the next but few.
 */
const mostTried = 28;

const onMain = ({ legs }: Pick<CircuitRuns, "legs">): string[] =>
  legs.filter(({ main, to }) => main && to !== legEnd).map(({ to }) => to);

/** Whether some places of a ring are left out where two of them are tried together. */
export const isThinned = (circuit: Pick<CircuitRuns, "legs" | "closed">): boolean =>
  circuit.closed && onMain(circuit).length > mostTried;

/** Pairs of places on the ring that are no neighbours. */
function apartOnMain({ sheet }: Predictions): (readonly [string, string])[] {
  const all = onMain(sheet.circuit);
  const each = all.length / Math.min(all.length, mostTried);
  const places = Array.from({ length: Math.min(all.length, mostTried) }, (_, index) => Math.floor(index * each));
  return places.flatMap((from) =>
    places.filter((to) => to >= from + 2).map((to) => [all[from] ?? "", all[to] ?? ""] as const),
  );
}

/** Another size than written, all the way: of both live conductors, or of one conductor. */
function otherSizes(predictions: Predictions): Hypothesis[] {
  const { circuit, sizes } = predictions.sheet;
  const { unlikelySize } = diagnosisPractice;
  if (!sizes) return [];
  const read = conductorsRead(predictions);
  const change = (kind: string, which: readonly Conductor[], own: number | undefined): Hypothesis[] => {
    const rank = (csa: number | undefined) => conductorResistance.rows.findIndex(({ facts }) => facts.csa === csa);
    const oneLive = which.length === 1 && which[0] !== "cpc";
    const before = conductorResistance.rows.find(({ facts }) => facts.csa === own)?.facts.copper2;
    if (before === undefined || !which.some((conductor) => read.includes(conductor))) return [];
    return conductorResistance.rows.flatMap(({ facts }) => {
      const ratio = facts.copper2 / before;
      if (facts.csa === own || ratio > 8 || ratio < 1 / 8 || facts.csa < 1) return [];
      const perMetre = { ...circuit.perMetre };
      for (const conductor of which) perMetre[conductor] *= ratio;
      const values = predictions.withLinks({}, perMetre);
      // In one sheath no larger protective conductor is made; of separate cores it is often of the line's size.
      const unmade = kind === "size-cpc" && facts.csa > (sizes.cpcMost ?? Number.POSITIVE_INFINITY);
      const isUsual = kind === "size-cpc" && sizes.cpcMost === undefined && facts.csa === sizes.line;
      const steps = isUsual ? 0 : Math.max(0, Math.abs(rank(facts.csa) - rank(own)) - 1);
      const name = which.length > 1 ? "line and neutral are" : `${conductorWords[which[0] ?? "line"]} is`;
      return {
        kind,
        where: "",
        predict: () => values,
        penalty: unlikelySize.value * ((oneLive ? 1 : 0) + (unmade ? 1 : 0) + steps),
        state: () => ({ faults: [], perMetre }),
        say: () => `The ${name} ${facts.csa} mm² throughout, not the ${own} mm² that is written.`,
      };
    });
  };
  return [
    ...change("size-live", ["line", "neutral"], sizes.line),
    ...change("size-line", ["line"], sizes.line),
    ...change("size-neutral", ["neutral"], sizes.neutral),
    ...change("size-cpc", ["cpc"], sizes.cpc),
  ];
}

export function* pointFaults(predictions: Predictions): Steps<Hypothesis[]> {
  const { readings, circuit } = predictions.sheet;
  const read = circuit.places.filter((name) =>
    readings.some(({ measurement }) => "place" in measurement && measurement.place === name),
  );
  const each = yield* eachInSteps(read, atOnce, (name) => [
    ...swaps(predictions, name),
    ...contacts(predictions, name),
    ...(circuit.closed ? [undrawnSpur(predictions, name)] : []),
  ]);
  return each.flat();
}

/** What each reading gains by a size of 1, over the sound circuit and over any other. */
export function additiveOverlay({ sound }: Predictions, adds: ArrayLike<number>) {
  const overlay = (values: ArrayLike<number>, size: number, into = new Float64Array(values)): Float64Array => {
    for (let at = 0; at < into.length; at++) into[at] = (values[at] ?? 0) + size * (adds[at] ?? 0);
    return into;
  };
  return { adds, overlay, predict: (size: number) => overlay(sound, size) };
}

/** Readings at which nothing is found, whatever else there is. */
function openCircuitOverlay({ sound }: Predictions, isOpen: (at: number) => boolean) {
  const opened = [...sound.keys()].filter(isOpen);
  const overlay = (values: ArrayLike<number>, _size = 0, into = new Float64Array(values)): Float64Array => {
    for (const at of opened) into[at] = open;
    return into;
  };
  const values = overlay(sound);
  return { overlay, predict: () => values };
}

/** The conductors whose pins at a place a reading uses. */
function pinsUsed({ sheet }: Predictions, at: number, name: string): Conductor[] {
  const measurement = sheet.readings[at]?.measurement;
  if (!measurement || !("place" in measurement) || measurement.place !== name) return [];
  if (measurement.kind === "round") return ["line", measurement.other];
  return measurement.kind === "lead" ? [measurement.conductor] : [];
}

function contacts(predictions: Predictions, name: string): Hypothesis[] {
  return conductorsRead(predictions).flatMap((conductor): Hypothesis[] => {
    const adds = Array.from(predictions.sound, (_, at) =>
      pinsUsed(predictions, at, name).includes(conductor) ? 1 : 0,
    );
    if (adds.every((add) => add === 0)) return [];
    return [
      {
        kind: `contact-${conductor}`,
        where: `at ${name}`,
        ...additiveOverlay(predictions, adds),
        range: joint,
        parameter: { name: "contact", unit: "Ω" },
        state: (size) => ({
          faults: [{ kind: "contact", conductor, place: name, ohms: size }],
        }),
        say: (size) => `The ${conductorWords[conductor]} has a poor contact of about ${ohms(size)}`,
      },
      {
        kind: `pin-${conductor}`,
        where: `at ${name}`,
        ...openCircuitOverlay(predictions, (at) => adds[at] === 1),
        state: () => ({
          faults: [{ kind: "contact", conductor, place: name, ohms: open }],
        }),
        say: () =>
          conductor === "line"
            ? "The line is not connected, or the point is on another circuit,"
            : conductor === "neutral"
              ? "The neutral is not connected, or is borrowed from another circuit,"
              : "The protective conductor is not connected",
      },
    ];
  });
}

const pairs = [
  ["line", "neutral"],
  ["line", "cpc"],
  ["neutral", "cpc"],
] as const;

/** Crossed polarity: a round in which the pins no longer stand on the two joined conductors finds nothing. */
function swaps(predictions: Predictions, name: string): Hypothesis[] {
  return pairs.map((pair): Hypothesis => {
    const [one, other] = pair;
    const wired = (conductor: Conductor) => (conductor === one ? other : conductor === other ? one : conductor);
    const isOpen = (at: number): boolean => {
      const used = pinsUsed(predictions, at, name);
      return !used.every((conductor) => used.includes(wired(conductor)));
    };
    return {
      kind: `swapped-${one}-${other}`,
      where: `at ${name}`,
      ...openCircuitOverlay(predictions, isOpen),
      state: () => ({ faults: [{ kind: "swapped", pair, place: name }] }),
      say: () => `The ${conductorWords[one]} and ${conductorWords[other]} are crossed`,
    };
  });
}

/** The point is further along a spur than drawn, or on one that is not drawn at all. */
function undrawnSpur(predictions: Predictions, name: string): Hypothesis {
  const { circuit, readings } = predictions.sheet;
  const { perMetre } = circuit;
  const adds = readings.map(({ measurement }) => {
    if (measurement.kind !== "round" || !onSpurOf(circuit, name, measurement.place)) return 0;
    return perMetre.line + perMetre[measurement.other];
  });
  const drawn = circuit.legs.some(({ to, main, length }) => to === name && !main && length > 0);
  return {
    kind: "spur",
    where: `at ${name}`,
    ...additiveOverlay(predictions, adds),
    range: cable,
    parameter: { name: "cable", unit: "m" },
    state: (size) => ({
      faults: [{ kind: "spur", place: name, length: size }],
    }),
    say: (size) => {
      const length = metres(Math.max(1, Math.round(size)));
      return drawn
        ? `The spur has about ${length} more cable than is drawn`
        : `The point is on about ${length} of spur that is not drawn`;
    },
  };
}
