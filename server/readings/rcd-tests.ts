import { type RcdWindow, rcdTime } from "../calc/rcd-time.ts";
import { memoByObject, memoOfContext } from "../circuit/kept.ts";
import { outletRcds, rcdsOfBoard } from "../circuit/rcds.ts";
import { type Test, testsOf } from "../circuit/supply.ts";
import type { Rcd, WayStudy } from "../circuit/way.ts";
import type { Context } from "../model/installation.ts";
import { asBlock, type Fact, type FactOf, isAbsent, type Quantity, type Val } from "../model/values.ts";

export type RcdFact = FactOf<"live", "rcd">;
type ButtonFact = FactOf<"live" | "boardLive", "test-button">;
type WayTripFact = FactOf<"live", "trip-current">;
export type TripFact = FactOf<"boardLive", "trip-current">;

/** One RCD test with the device it was made on, as far as that is known. */
export interface RcdTest {
  readonly fact: RcdFact;
  readonly device: Rcd | undefined;
  readonly test: Test<"live"> | Test<"boardLive">;
  /** A time that was read; nothing where it was not measured or a limitation stands. */
  readonly time: Quantity | undefined;
  readonly multiple: Val<number> | undefined;
}

/** The tests of a way that stand: the latest of each device at each current. */
export const rcdTestsOfWay = memoByObject((study: WayStudy): readonly RcdTest[] =>
  standing(study.liveTests.map((test) => testsIn(test, (fact) => deviceOnWay(fact, study)))),
);

/**
 * Of the tests that stand of a device at its rated current, the worst: of its waveforms and half cycles that is what
 * it can do. `line` is the line the device itself stands on, where a test may be too.
 */
export const worstAtRated = (tests: readonly RcdTest[], line: Fact): RcdTest | undefined =>
  worstOfLatest(
    tests.filter(
      ({ fact, device, multiple }) => (multiple?.value ?? 1) === 1 && (device?.fact === line || fact === line),
    ),
  );

/** Of the tests of the latest day, all at one current, the one that shows the device at its worst. */
export function worstOfLatest([first, ...more]: readonly RcdTest[]): RcdTest | undefined {
  if (!first) return undefined;
  const ofThatDay = more.filter(({ test }) => test.on === first.test.on);
  return ofThatDay.reduce((worst, one) => (slowness(one) > slowness(worst) ? one : worst), first);
}

/** Where it has to trip, not at all is longer than any time; where it has to hold, any time is worse than holding. */
function slowness({ fact, time, multiple }: RcdTest): number {
  if (time) return time.value;
  const hasToTrip = multiple === undefined || multiple.value >= 1;
  return fact.args.noTrip && hasToTrip ? Number.POSITIVE_INFINITY : fact.args.noTrip ? 0 : -1;
}

/** The tests of a board that stand. */
export const rcdTestsOfBoard = memoOfContext((context: Context): readonly RcdTest[] =>
  standing(liveOfBoard(context).map((test) => testsIn(test, (fact) => deviceOnBoard(fact, context)))),
);

const isRead = ({ time, fact }: RcdTest): boolean => time !== undefined || fact.args.noTrip !== undefined;

/**
 * A later test takes the place of an earlier one of the same device and current, and of no other; one that could not be
 * made takes the place of none. Latest first.
 */
function standing(days: readonly (readonly RcdTest[])[]): RcdTest[] {
  const found: RcdTest[] = [];
  const same = (one: RcdTest, other: RcdTest): boolean =>
    one.device?.fact === other.device?.fact &&
    one.fact.args.name?.value === other.fact.args.name?.value &&
    one.fact.args.point?.value === other.fact.args.point?.value &&
    one.multiple?.value === other.multiple?.value &&
    one.fact.args.waveform?.value === other.fact.args.waveform?.value &&
    one.fact.args.half?.value === other.fact.args.half?.value;
  for (const day of days) {
    found.push(...day.filter((test) => !found.some((later) => same(later, test) && (isRead(later) || !isRead(test)))));
  }
  return found;
}

export const liveOfBoard = ({ board }: Context): Test<"boardLive">[] => testsOf<"boardLive">(board.facts.all("live"));

function testsIn(test: Test<"live"> | Test<"boardLive">, deviceOf: (fact: RcdFact) => Rcd | undefined): RcdTest[] {
  const facts = asBlock<"live">(test.facts).all("rcd");
  return facts.map((fact) => {
    const { time, multiple } = fact.args;
    return { fact, device: deviceOf(fact), test, time: time && !isAbsent(time) ? time : undefined, multiple };
  });
}

/**
 * The RCD a test on a way was made on: the one it names or fits, else the nearest to the load at the board. It is not
 * known while a line that names one is not understood: that may be the one.
 */
export function deviceOnWay(fact: RcdFact | ButtonFact | WayTripFact, study: WayStudy): Rcd | undefined {
  const point = "point" in fact.args ? fact.args.point?.value : undefined;
  if (point !== undefined) return outletRcds(study.facts).find((rcd) => rcd.point === point);
  const name = "name" in fact.args ? fact.args.name?.value : undefined;
  if (name !== undefined) return rcdCalled(name, study.context);
  if (isUnclear(study)) return undefined;
  return fitting(fact, study.rcds) ?? study.rcds[0];
}

/** Whether a line that says which RCDs a way is behind was not understood, or names one that is not known. */
function isUnclear({ facts, context }: WayStudy): boolean {
  const behind = facts.one("behind")?.args.rcd.value;
  return (
    facts.broken.some((word) => word === "device" || word === "rcd" || word === "behind") ||
    (behind !== undefined && rcdCalled(behind, context) === undefined)
  );
}

/** The RCD of a board that a test names: by its own name, or as the main switch. */
const rcdCalled = (called: string, { board }: Context): Rcd | undefined =>
  rcdsOfBoard(board).find(({ name, at }) => (name ?? at) === called);

/** The latest press of the button of an RCD that is tested on its way. */
export const buttonOnWay = (rcd: Rcd, study: WayStudy): Fact | undefined =>
  study.liveTests
    .flatMap(({ facts }) => facts.all("test-button"))
    .find((fact) => deviceOnWay(fact, study)?.fact === rcd.fact);

/** The latest press of the button of an RCD that the ways of a board share. */
export const buttonOnBoard = (rcd: Rcd, context: Context): Fact | undefined =>
  liveOfBoard(context)
    .flatMap(({ facts }) => facts.all("test-button"))
    .find((fact) => deviceOnBoard(fact, context)?.fact === rcd.fact);

/** The RCD a test on a board was made on. With several of one rating and no name it is not known. */
export function deviceOnBoard(fact: RcdFact | ButtonFact | TripFact, context: Context): Rcd | undefined {
  const all = rcdsOfBoard(context.board);
  const name = fact.args.name?.value;
  if (name !== undefined) return rcdCalled(name, context);
  const same = all.filter((rcd) => rcd.sensitivity === sensitivityOf(fact));
  if (same.length === 1) return same[0];
  if (all.length === 1) return all[0];
  // Those of the board have names to be called by; what has none is the main switch.
  const unnamed = all.filter((rcd) => rcd.name === undefined);
  return fact.word === "test-button" && unnamed.length === 1 ? unnamed[0] : undefined;
}

const sensitivityOf = (fact: RcdFact | ButtonFact | TripFact | WayTripFact): number | undefined =>
  "sensitivity" in fact.args ? fact.args.sensitivity?.value : undefined;

const fitting = (fact: RcdFact | ButtonFact | WayTripFact, rcds: readonly Rcd[]): Rcd | undefined =>
  rcds.find((rcd) => rcd.sensitivity === sensitivityOf(fact));

/** What the test should have shown; nothing where the device, its standard or the edition is not known. */
export function windowOf({ device, multiple }: RcdTest, context: Context): RcdWindow | undefined {
  if (!device || !multiple || !context.edition) return undefined;
  return rcdTime({
    standard: device.standard,
    delayed: device.delayed,
    multiple: multiple.value,
    edition: context.edition,
  });
}

const nameByPlace: Readonly<Record<Rcd["at"], string>> = {
  device: "the RCBO",
  way: "the way's RCD",
  outlet: "the RCD in an outlet",
  board: "an RCD of the board",
  "main-switch": "the main switch",
  upstream: "the RCD upstream",
};

/** What a person calls an RCD. */
export function rcdLabel(rcd: Rcd): string {
  if (rcd.name !== undefined) return `RCD ${rcd.name}`;
  if (rcd.point !== undefined) return `the RCD at ${rcd.point}`;
  return nameByPlace[rcd.at];
}

/** Every RCD test of a board and its ways, whichever block it stands in and however old. */
export function everyRcdFact(
  context: Context,
  studies: readonly WayStudy[],
): { fact: Fact; device: Rcd | undefined }[] {
  const onBoard = liveOfBoard(context).flatMap(({ facts }) =>
    facts.all("rcd").map((fact) => ({ fact, device: deviceOnBoard(fact, context) })),
  );
  return [...onBoard, ...studies.flatMap(rcdFactsOfWay)];
}

/** The same of one way. */
export const rcdFactsOfWay = (study: WayStudy): { fact: Fact; device: Rcd | undefined }[] =>
  study.liveTests.flatMap(({ facts }) => facts.all("rcd").map((fact) => ({ fact, device: deviceOnWay(fact, study) })));

/** Every press of a test button of a board and its ways. */
export function everyButtonFact(
  context: Context,
  studies: readonly WayStudy[],
): { fact: ButtonFact; device: Rcd | undefined }[] {
  const onBoard = liveOfBoard(context).flatMap(({ facts }) =>
    facts.all("test-button").map((fact) => ({ fact, device: deviceOnBoard(fact, context) })),
  );
  const onWays = studies.flatMap((study) =>
    study.liveTests.flatMap(({ facts }) =>
      facts.all("test-button").map((fact) => ({ fact, device: deviceOnWay(fact, study) })),
    ),
  );
  return [...onBoard, ...onWays];
}

/** Every RCD test of a board and its ways, of each the latest first. */
export const everyRcdTest = (context: Context, studies: readonly WayStudy[]): RcdTest[] => [
  ...liveOfBoard(context).flatMap((test) => testsIn(test, (fact) => deviceOnBoard(fact, context))),
  ...studies.flatMap((study) => study.liveTests.flatMap((test) => testsIn(test, (fact) => deviceOnWay(fact, study)))),
];

/** The latest tests of a board and of each of its ways. */
export const latestRcdTests = (context: Context, studies: readonly WayStudy[]): RcdTest[] => [
  ...rcdTestsOfBoard(context),
  ...studies.flatMap(rcdTestsOfWay),
];
