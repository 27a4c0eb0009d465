/** Slips of the test and of the pen: the circuit is sound, the readings are not what they are taken for. */
import type { Conductor } from "../calc/circuit-network.ts";
import type { BoardLinks, Measurement } from "../calc/circuit-readings.ts";
import { ohms, plain } from "../calc/result.ts";
import type { Steps } from "../memo/steps.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import { capital } from "../text/words.ts";
import { additiveOverlay } from "./faults.ts";
import type { Hypothesis } from "./hypothesis.ts";
import type { Predictions } from "./predictions.ts";
import type { Sheet } from "./sheet.ts";

const practice = diagnosisPractice;
const soundState = () => ({ faults: [] });

export function* slips(predictions: Predictions): Steps<Hypothesis[]> {
  const links = wrongLinks(predictions);
  yield;
  const others = yield* exchanged(predictions);
  yield;
  return [
    ...links,
    leads(predictions),
    ...partLeads(predictions),
    ...wrongLength(predictions),
    ...others,
    ...copied(predictions),
    ...copiedEnd(predictions),
    ...sumOfEnds(predictions),
    ...decimalPoint(predictions),
  ];
}

type Rounds = "neutral" | "cpc";

function wrongLinks(predictions: Predictions): Hypothesis[] {
  const { readings, circuit } = predictions.sheet;
  const read = (["neutral", "cpc"] as const).filter((other) =>
    readings.some(({ measurement }) => measurement.kind === "round" && measurement.other === other),
  );
  const rounds: readonly (readonly Rounds[])[] = [...read.map((one) => [one]), ...(read.length > 1 ? [read] : [])];
  const ways: readonly [string, BoardLinks, string][] = circuit.closed
    ? [
        [
          "same-leg",
          "same-leg",
          "The legs were not crossed at the board: line was joined to the other conductor of the same leg",
        ],
        ["one-link", "one", "Only one of the two links was made at the board"],
        ["one-link", "last", "Only one of the two links was made at the board"],
        ["no-link", "none", "The conductors were not joined at the board"],
      ]
    : [["no-link", "none", "The conductors were not joined at the board"]];
  return ways.flatMap(([kind, how, words]) =>
    rounds.map((which): Hypothesis => {
      const links = Object.fromEntries(which.map((other) => [other, how]));
      const values = predictions.withLinks(links);
      const round =
        which.length > 1 ? "in both rounds" : which[0] === "neutral" ? "in the L-N round" : "in the L-E round";
      return {
        kind: `${kind}-${which.join("-")}`,
        where: "",
        predict: () => values,
        links,
        state: soundState,
        say: () =>
          `${words} ${circuit.closed ? round : "for this test"}; the circuit itself may be sound, which these readings do not show.`,
      };
    }),
  );
}

function leads(predictions: Predictions): Hypothesis {
  const all = allOf(predictions.sheet);
  return {
    kind: "leads",
    where: "",
    ...additiveOverlay(
      predictions,
      Array.from(predictions.sound, () => 1),
    ),
    range: {
      least: practice.jointLeast.value,
      most: practice.leadsMost.value,
      signed: true,
    },
    parameter: { name: "leads", unit: "Ω" },
    state: soundState,
    say: (size) =>
      size > 0
        ? `The test leads were not nulled: ${all} has about ${ohms(size)} too much.`
        : `The null was wrong: ${all} has about ${ohms(-size)} too little.`,
  };
}

/** Tests that are made one after another, each with a null of its own. */
const parts: readonly {
  readonly kind: string;
  readonly words: string;
  readonly holds: (measurement: Measurement) => boolean;
}[] = [
  { kind: "leads-ends", words: "end-to-end readings", holds: ({ kind }) => kind === "ends" },
  { kind: "leads-points", words: "readings at the points", holds: ({ kind }) => kind === "round" },
  {
    kind: "leads-neutral",
    words: "L-N readings",
    holds: (measurement) => measurement.kind === "round" && measurement.other === "neutral",
  },
  {
    kind: "leads-cpc",
    words: "L-E readings",
    holds: (measurement) => measurement.kind === "round" && measurement.other === "cpc",
  },
];

/** Leads that were not nulled for one part of the tests. */
function partLeads(predictions: Predictions): Hypothesis[] {
  const { readings } = predictions.sheet;
  return parts.flatMap(({ kind, words, holds }): Hypothesis[] => {
    const adds = readings.map(({ measurement }) => (holds(measurement) ? 1 : 0));
    const count = adds.filter((add) => add === 1).length;
    if (count < leastInPart || count === readings.length) return [];
    return [
      {
        kind,
        where: "",
        ...additiveOverlay(predictions, adds),
        range: { least: practice.jointLeast.value, most: practice.leadsMost.value, signed: true },
        parameter: { name: "leads", unit: "Ω" },
        state: soundState,
        say: (size) =>
          size > 0
            ? `The test leads were not nulled for the ${words}: each has about ${ohms(size)} too much.`
            : `The null was wrong for the ${words}: each has about ${ohms(-size)} too little.`,
      },
    ];
  });
}

/** Two readings that are off by as much may be so by chance. */
const leastInPart = 3;

/** All that was read, by its name where it is one figure. */
const allOf = ({ readings }: Sheet): string => (readings.length === 1 && readings[0]?.name) || "every reading";

function wrongLength({ sound, sheet }: Predictions): Hypothesis[] {
  if (!sheet.circuit.lengthKnown) return [];
  const all = allOf(sheet);
  return [
    {
      kind: "length",
      where: "",
      predict: () => sound,
      stretch: "any",
      parameter: { name: "length", unit: "" },
      state: soundState,
      say: (_, scale) =>
        scale > 4 || scale < 1 / 4
          ? `${capital(all)} is about ${plain(Number(scale.toPrecision(2)))} times what the length gives: the length, or the unit, is wrong.`
          : scale > 1
            ? `All the cable is about ${plain(scale, 1)} times as long as written.`
            : `All the cable is only about ${plain(scale, 2)} of the length that is written.`,
    },
  ];
}

/** Two readings in each other's place: of two points in one column, of the two columns at a point, of two ends. */
function* exchanged({ sound, sheet }: Predictions): Steps<Hypothesis[]> {
  const { readings, accuracy } = sheet;
  const columns = new Map<string, number[]>();
  const note = (key: string, at: number) => columns.set(key, [...(columns.get(key) ?? []), at]);
  for (const [at, { measurement }] of readings.entries()) {
    if (measurement.kind === "ends") note("ends", at);
    if (measurement.kind !== "round") continue;
    note(`column ${measurement.other}`, at);
    note(`point ${measurement.place}`, at);
  }
  const found: Hypothesis[] = [];
  for (const [key, column] of columns)
    for (const [index, one] of column.entries()) {
      if (index % columnsAtOnce === 1) yield;
      for (const other of column.slice(index + 1)) {
        const [first, second] = [readings[one], readings[other]];
        if (!first || !second) continue;
        const apart = Math.abs((sound[one] ?? 0) - (sound[other] ?? 0));
        if (!(apart > accuracy.digits)) continue;
        found.push({
          kind: `exchanged-${key.split(" ")[0]}`,
          where: "",
          predict: () => withExchanged(sound, one, other),
          state: soundState,
          say: () => `The readings ${first.name} and ${second.name} stand in each other's place.`,
        });
      }
    }
  return found;
}

/** Of so many readings the pairs with all others are made in about a millisecond. */
const columnsAtOnce = 8;

/** Made when it is asked for: of a hundred points there are ten thousand pairs. */
function withExchanged(sound: Float64Array, one: number, other: number): Float64Array {
  const values = Float64Array.from(sound);
  values[one] = sound[other] ?? 0;
  values[other] = sound[one] ?? 0;
  return values;
}

/** One column written into the other. */
function copied({ sound, sheet }: Predictions): Hypothesis[] {
  const { readings } = sheet;
  const twin = (at: number): number | undefined => {
    const own = readings[at]?.measurement;
    if (own?.kind !== "round") return undefined;
    const found = readings.findIndex(
      ({ measurement }) =>
        measurement.kind === "round" && measurement.place === own.place && measurement.other !== own.other,
    );
    return found < 0 ? undefined : found;
  };
  return (["neutral", "cpc"] as const).flatMap((into): Hypothesis[] => {
    let count = 0;
    const values = sound.map((value, at) => {
      const measurement = readings[at]?.measurement;
      const other = measurement?.kind === "round" && measurement.other === into ? twin(at) : undefined;
      if (other === undefined) return value;
      count++;
      return sound[other] ?? value;
    });
    if (count < 2) return [];
    const [from, to] = into === "neutral" ? ["L-E", "L-N"] : ["L-N", "L-E"];
    return [
      {
        kind: `copied-${into}`,
        where: "",
        predict: () => values,
        state: soundState,
        say: () => `The ${to} column repeats the ${from} column.`,
      },
    ];
  });
}

/** One end-to-end reading written for another, of a conductor of another size. */
function copiedEnd({ sound, sheet }: Predictions): Hypothesis[] {
  const { readings, accuracy } = sheet;
  const endOf = (conductor: Conductor) =>
    readings.findIndex(({ measurement }) => measurement.kind === "ends" && measurement.conductor === conductor);
  const [line, cpc] = [endOf("line"), endOf("cpc")];
  const [from, into] = [readings[line], readings[cpc]];
  if (!from || !into || from.value !== into.value || from.open || into.open) return [];
  if (Math.abs((sound[line] ?? 0) - (sound[cpc] ?? 0)) <= accuracy.digits) return [];
  const values = Float64Array.from(sound);
  values[cpc] = sound[line] ?? 0;
  return [
    {
      kind: "copied-end",
      where: "",
      predict: () => values,
      state: soundState,
      say: () => `${into.name} repeats ${from.name}, where conductors of these sizes read differently.`,
    },
  ];
}

/** R1+R2 of a ring that is the sum of its ends, or half of it, and not the quarter that is read with the legs crossed. */
function sumOfEnds({ sound, sheet }: Predictions): Hypothesis[] {
  const { circuit, readings } = sheet;
  const endOf = (conductor: Conductor) =>
    readings.findIndex(({ measurement }) => measurement.kind === "ends" && measurement.conductor === conductor);
  const [line, cpc] = [endOf("line"), endOf("cpc")];
  const rounds = [...readings.keys()].filter((at) => isEarthRound(readings[at]?.measurement));
  const [whole] = rounds;
  // Of several points nobody writes the sum of the ends.
  if (!circuit.closed || line < 0 || cpc < 0 || whole === undefined || rounds.length > 1) return [];
  const name = readings[whole]?.name ?? "R1+R2";
  return ([1, 2] as const).map((by): Hypothesis => {
    const overlay = (values: ArrayLike<number>, _size = 0, into = new Float64Array(values)): Float64Array => {
      into[whole] = ((values[line] ?? 0) + (values[cpc] ?? 0)) / by;
      return into;
    };
    const values = overlay(sound);
    return {
      kind: by === 1 ? "undivided" : "halved",
      where: "",
      overlay,
      predict: () => values,
      state: soundState,
      say: () =>
        `${name} is ${by === 1 ? "" : "half of "}r1 + r2, end to end, and not the quarter that the legs give crossed.`,
    };
  });
}

const isEarthRound = (measurement: Measurement | undefined): boolean =>
  measurement?.kind === "round" && measurement.other === "cpc";

const powers = [10, 100, 1000, 0.1, 0.01, 0.001];

/** The decimal point, or the unit, of one reading. */
function decimalPoint({ sound, sheet }: Predictions): Hypothesis[] {
  return sheet.readings.flatMap(({ name, offScale }, at) =>
    offScale
      ? []
      : powers.map(
          (power): Hypothesis => ({
            kind: "decimal-point",
            where: "",
            predict: () => sound,
            reread: { at, power },
            state: soundState,
            say: () =>
              `${name} is written ${power > 1 ? `${power} times too high` : `${plain(1 / power)} times too low`}: a slip of the decimal point or the unit.`,
          }),
        ),
  );
}
