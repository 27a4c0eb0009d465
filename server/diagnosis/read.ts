/** What the dead tests of a way say of its resistances, as a sheet to be diagnosed. */

import type { Measurement } from "../calc/circuit-readings.ts";
import { practiceOf } from "../calc/practice.ts";
import { standings } from "../calc/sound-readings.ts";
import { hasMetalBeside } from "../circuit/cpc.ts";
import { memoByObject } from "../circuit/kept.ts";
import type { Test } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { exact, type Fact, type FactOf, quantityOf, type Reading } from "../model/values.ts";
import { type CircuitNetwork, circuitOf, farPlace } from "../readings/circuit-network.ts";
import { temperatureOf } from "../readings/dead.ts";
import { against, insulationLimit, insulationOf } from "../readings/insulation.ts";
import { rounds, studyRing } from "../readings/ring.ts";
import { excess } from "../readings/ring-pattern.ts";
import { accuracyOf } from "../readings/uncertainty.ts";
import { visitsOf } from "../readings/visits.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";

import { flatPairs } from "../tables/sizing-practice.ts";
import { rowOf } from "../tables/table.ts";
import {
  type Accuracy,
  type Evidence,
  type LoopSeen,
  type Sheet,
  type SheetReading,
  type Sizes,
  usualAccuracy,
} from "./sheet.ts";

/** The latest reading of each kind and point, and the block the newest of them stands in. */
export interface ReadSheet extends Sheet {
  readonly circuit: CircuitNetwork;
  readonly test: Test<"dead">;
}

export const sheetOfWay = (study: WayStudy): ReadSheet | undefined => readSheet(study, accuracyOn(study));

/** One step of a meter that shows hundredths: no reading is known more closely than it is written. */
const lastFigure = 10 ** -deadTestPractice.meterDecimals.value;

/** What is stated of the instruments of the dead tests, the coarsest of them; the usual where one of them says nothing. */
function accuracyOn(study: WayStudy): Accuracy {
  const used = new Set(study.deadTests.flatMap((test) => test.with));
  const stated = [...used].map((name) => accuracyOf(study.context.names, name, "continuity"));
  if (stated.length === 0 || study.deadTests.some((test) => test.with.length === 0)) return usualAccuracy;
  let share = 0;
  let digits = lastFigure;
  for (const accuracy of stated) {
    if (!accuracy) return usualAccuracy;
    share = Math.max(share, accuracy.percent / 100);
    digits = Math.max(digits, accuracy.digits * lastFigure);
  }
  return { share, digits };
}

/** A sheet with an instrument's own accuracy instead of the usual. */
function readSheet(study: WayStudy, accuracy: Accuracy): ReadSheet | undefined {
  const { cable } = study;
  const [test] = lastVisit(study);
  if (study.isSpare || !test || !cable) return undefined;
  const points = pointsRead(study);
  const circuit = circuitOf(study, [...points.keys()], temperatureOf(test));
  if (!circuit) return undefined;
  const pair = cable.construction === "flat-twin" ? rowOf(flatPairs, { line: cable.line })?.facts.cpc : undefined;
  const sizes = {
    line: cable.line,
    neutral: cable.neutral,
    ...(cable.cpc === undefined ? {} : { cpc: cable.cpc }),
    ...(pair === undefined ? {} : { cpcMost: pair }),
  };
  const readings = [...endReadings(study), ...pointReadings(study, points), ...farReadings(study, circuit, points)];
  // Beside bonded metal, or by armour of unknown resistance, nothing can be expected of the protective conductor.
  const blind = circuit.sources.cpc === undefined || hasMetalBeside(study);
  const usable = blind ? readings.filter(({ measurement }) => !usesCpc(measurement)) : readings;
  return usable.length === 0 ? undefined : new WaySheet(study, { circuit, sizes, readings: usable, accuracy, test });
}

/** Most sheets are sound, and nobody asks what the other tests show. */
class WaySheet implements ReadSheet {
  readonly circuit: CircuitNetwork;
  readonly sizes: Sizes;
  readonly readings: readonly SheetReading[];
  readonly accuracy: Accuracy;
  readonly test: Test<"dead">;
  readonly #study: WayStudy;

  constructor(study: WayStudy, { circuit, sizes, readings, accuracy, test }: Omit<WaySheet, "evidence">) {
    this.#study = study;
    this.circuit = circuit;
    this.sizes = sizes;
    this.readings = readings;
    this.accuracy = accuracy;
    this.test = test;
  }

  get evidence(): Evidence | undefined {
    return evidenceOnWay(this.#study);
  }
}

const evidenceOnWay = memoByObject((study: WayStudy): Evidence | undefined => {
  const sheet = sheetOfWay(study);
  return sheet && evidenceOf(study, sheet.circuit, sheet.test.on);
});

/** What was tested no earlier than the readings: of a test before them it is not known what has happened since. */
function evidenceOf(study: WayStudy, circuit: CircuitNetwork, since: string): Evidence {
  const tests = study.liveTests.filter(({ on }) => on >= since);
  const board = study.boardImpedance?.value;
  const leaks = leakOf(study);
  const behindRcd = study.rcds.length > 0;
  const atPoints = tests.flatMap(({ facts }) =>
    facts.all("at").flatMap((fact) => loopSeen(fact.args.point.value, fact, fact.args.Zs, behindRcd)),
  );
  const atEnd = tests.flatMap(({ facts }) =>
    facts
      .all("Zs")
      .flatMap((fact) =>
        loopSeen(
          farthest(circuit),
          fact,
          fact.args.value,
          fact.args.method ? fact.args.method.value === "no-trip" : behindRcd,
        ),
      ),
  );
  return {
    loops: firstOfEach([...atPoints, ...atEnd]).filter(({ place }) => circuit.places.includes(place)),
    tripped: tests.some(({ facts }) => facts.all("rcd").some(({ args }) => exact(args.time) !== undefined)),
    ...(board === undefined ? {} : { board }),
    ...(leaks ? { leaks } : {}),
  };
}

/** A no-trip range reads high; it is taken where an RCD is in the loop and nothing is written. */
function loopSeen(place: string, { provenance }: Fact, reading: Reading | undefined, mayBeNoTrip: boolean): LoopSeen[] {
  const quantity = quantityOf(reading);
  if (!quantity || quantity.sign === "<" || quantity.value <= 0 || provenance !== "measured") return [];
  const excess = mayBeNoTrip ? practiceOf("loop-no-trip").value : 0;
  return [{ place, value: quantity.value, open: quantity.sign === ">", excess }];
}

/** The latest of each place: the tests stand in that order. */
const firstOfEach = (loops: readonly LoopSeen[]): LoopSeen[] => [
  ...new Map([...loops].reverse().map((loop) => [loop.place, loop])).values(),
];

function leakOf(study: WayStudy): Evidence["leaks"] {
  const test = insulationOf(study);
  const [least] = [...(test?.values ?? [])].sort((one, other) => one.quantity.value - other.quantity.value);
  const limit = insulationLimit(study)?.minimum.value;
  return least && limit !== undefined && against(least.quantity, limit) === "fails"
    ? { pair: least.pair, value: least.quantity.value }
    : undefined;
}

const usesCpc = (measurement: Measurement): boolean =>
  "conductor" in measurement
    ? measurement.conductor === "cpc"
    : measurement.kind !== "round" || measurement.other === "cpc";

function reading(name: string, measurement: Measurement, fact: Fact, value: Reading | undefined): SheetReading[] {
  const quantity = quantityOf(value);
  if (!quantity || quantity.sign === "<" || quantity.value <= 0 || fact.provenance !== "measured") return [];
  const offScale = quantity.sign === ">";
  const open = offScale || quantity.value >= deadTestPractice.openLeast.value;
  return [{ name, measurement, value: quantity.value, open, offScale, at: { fact, span: quantity } }];
}

function endReadings(study: WayStudy): SheetReading[] {
  const fact = study.isRing ? latest(study, "ends") : undefined;
  if (!fact) return [];
  const { r1, rn, r2 } = fact.args;
  return [
    ...reading("r1", { kind: "ends", conductor: "line" }, fact, r1),
    ...reading("rn", { kind: "ends", conductor: "neutral" }, fact, rn),
    ...reading("r2", { kind: "ends", conductor: "cpc" }, fact, r2),
  ];
}

/**
 * The tests of conductors of the latest visit, the latest first. What was read years before shows the circuit as it was
 * then: beside later readings it would look like a fault of its own.
 */
const lastVisit = memoByObject(({ deadTests }: WayStudy): readonly Test<"dead">[] => {
  const tests = deadTests.filter(
    ({ facts }) => facts.has("ends") || facts.has("at") || facts.has("R1+R2") || facts.has("R2"),
  );
  // Visits are in the order of their tests: the latest one begins the list.
  return tests.slice(0, visitsOf(tests)[0]?.tests.length);
});

function latest<W extends "ends" | "R1+R2" | "R2">(study: WayStudy, word: W): FactOf<"dead", W> | undefined {
  for (const { facts } of lastVisit(study)) {
    if (facts.isUnread(word)) return undefined;
    const fact = facts.one(word);
    if (fact) return fact;
  }
  return undefined;
}

type PointFact = FactOf<"dead", "at">;

/** Points in the order of the file, each with its latest line. Points that may hang on a spur nobody drew are left out. */
function pointsRead(study: WayStudy): ReadonlyMap<string, PointFact> {
  const found = new Map<string, PointFact>();
  for (const test of lastVisit(study))
    for (const fact of test.facts.all("at"))
      if (!found.has(fact.args.point.value)) found.set(fact.args.point.value, fact);
  if (study.isRing) for (const name of maybeSpurs(study)) found.delete(name);
  return new Map([...found].sort(([, one], [, other]) => one.start - other.start));
}

const maybeSpurs = (study: WayStudy): string[] =>
  studyRing(study)
    .points.filter((point) => point.mayBeSpur && rounds.some((round) => (excess(point, round) ?? 0) > 0))
    .map(({ name }) => name);

function pointReadings(study: WayStudy, points: ReadonlyMap<string, PointFact>): SheetReading[] {
  if (study.facts.isUnread("dead") || study.deadTests.some(({ facts }) => facts.isUnread("at"))) return [];
  return [...points].flatMap(([place, fact]) => [
    ...reading(`L-N at ${place}`, { kind: "round", other: "neutral", place }, fact, fact.args["L-N"]),
    ...reading(`L-E at ${place}`, { kind: "round", other: "cpc", place }, fact, fact.args["L-E"]),
    ...(study.isRing ? [] : reading(`R2 at ${place}`, { kind: "lead", conductor: "cpc", place }, fact, fact.args.R2)),
  ]);
}

/** R1+R2 and R2 of a circuit, where its points were not read one by one: at the place that reads most. */
function farReadings(study: WayStudy, circuit: CircuitNetwork, points: ReadonlyMap<string, PointFact>): SheetReading[] {
  if ([...points.values()].some((fact) => quantityOf(fact.args["L-E"]))) return [];
  const place = farthest(circuit);
  const [both, alone] = [latest(study, "R1+R2"), latest(study, "R2")];
  if (study.isRing && place !== farPlace) return [];
  return [
    ...(both ? reading("R1+R2", { kind: "round", other: "cpc", place }, both, both.args.value) : []),
    ...(alone && !study.isRing
      ? reading("R2", { kind: "lead", conductor: "cpc", place }, alone, alone.args.value)
      : []),
  ];
}

function farthest(circuit: CircuitNetwork): string {
  const [first] = [...standings(circuit).of].sort(
    ([, one], [, other]) => other.along + other.branch - one.along - one.branch,
  );
  return first?.[0] ?? farPlace;
}
