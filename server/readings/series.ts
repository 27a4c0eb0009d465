/** One reading on all the days it was taken, the latest first: what drift is judged by. */
import { atTemperature } from "../calc/conductor-resistance.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Context, Installation, Names } from "../model/installation.ts";
import { type Fact, isAbsent, type Quantity, type Reading } from "../model/values.ts";
import type { MeterTest } from "./meter-tests.ts";
import { deadOfBoard, supplyTests } from "./meter-tests.ts";
import { liveOfBoard } from "./rcd-tests.ts";
import { type Uncertainty, uncertaintyInTest } from "./uncertainty.ts";

export interface Taken {
  readonly on: string;
  readonly fact: Fact;
  readonly quantity: Quantity;
  /** In the base unit; a conductor's resistance at 20 °C where its temperature was noted. */
  readonly value: number;
  readonly uncertainty: Uncertainty | undefined;
}

export interface Series {
  readonly name: string;
  readonly word: string;
  readonly now: Taken;
  /** Earlier readings, the latest first; never none. */
  readonly before: readonly Taken[];
}

export type DatedTest = MeterTest & { readonly on: string };
type Pick = (fact: Fact) => Reading | undefined;

const named =
  (arg: string): Pick =>
  (fact) =>
    fact.args[arg] as Reading | undefined;

/**
 * What stands now and what was read before. Nothing where the last word on it was not understood, was no reading, or
 * went off scale: there is nothing to hold against the earlier days then.
 */
function seriesOf(
  names: Names,
  tests: readonly DatedTest[],
  name: string,
  word: string,
  pick: Pick = named("value"),
): Series | undefined {
  const taken: Taken[] = [];
  for (const test of tests) {
    if (!test.facts) continue;
    if (test.facts.broken.includes(word)) break;
    const fact = test.facts.list.find((one) => one.word === word && pick(one) !== undefined);
    const reading = fact && pick(fact);
    if (!fact || !reading) continue;
    const usable = !isAbsent(reading) && reading.sign === "=" && fact.provenance === "measured";
    if (usable) taken.push(takenIn(names, test, fact, reading));
    else if (taken.length === 0) break;
  }
  const [now, ...before] = taken;
  return now && before.length > 0 ? { name, word, now, before } : undefined;
}

function takenIn(names: Names, test: DatedTest, fact: Fact, quantity: Quantity): Taken {
  const noted = test.facts.list.find(({ word }) => word === "temperature")?.args.value as Quantity | undefined;
  const dead = test.facts.kind === "dead" || test.facts.kind === "boardDead";
  const factor = dead && noted && fact.word !== "insulation" ? atTemperature(1, noted.value).value : 1;
  const uncertainty = uncertaintyInTest(names, test, fact, quantity);
  return { on: test.on, fact, quantity, value: quantity.value / factor, uncertainty };
}

const pointsIn = (tests: readonly DatedTest[]): string[] => [
  ...new Set(
    tests.flatMap(({ facts }) =>
      (facts?.list ?? []).flatMap(({ word, args }) =>
        word === "at" ? [(args.point as { value: string } | undefined)?.value ?? ""] : [],
      ),
    ),
  ),
];

const atPoint =
  (point: string, arg: string): Pick =>
  (fact) =>
    (fact.args.point as { value: string } | undefined)?.value === point ? (fact.args[arg] as Reading) : undefined;

type Wanted = readonly [name: string, word: string, pick?: Pick];

const all = (names: Names, tests: readonly DatedTest[], wanted: readonly Wanted[]): Series[] =>
  tests.length < 2 ? [] : wanted.flatMap(([name, word, pick]) => seriesOf(names, tests, name, word, pick) ?? []);

/** The resistances of a circuit that were read on more than one day. */
export function resistancesOfWay({ deadTests, liveTests, context: { names } }: WayStudy): Series[] {
  if (deadTests.length < 2 && liveTests.length < 2) return [];
  return [
    ...all(names, liveTests, [
      ["Zs", "Zs"],
      ...pointsIn(liveTests).map((point): Wanted => [`Zs at ${point}`, "at", atPoint(point, "Zs")]),
    ]),
    ...all(names, deadTests, [
      ["R1+R2", "R1+R2"],
      ["R2", "R2"],
      ...(["r1", "rn", "r2"] as const).map((end): Wanted => [end, "ends", named(end)]),
      ...pointsIn(deadTests).flatMap((point): Wanted[] => [
        [`L-N at ${point}`, "at", atPoint(point, "L-N")],
        [`L-E at ${point}`, "at", atPoint(point, "L-E")],
      ]),
    ]),
  ];
}

const liveDays = (context: Context): DatedTest[] => liveOfBoard(context);

/** The loop impedance of a board on more than one day. */
export const loopOfBoard = (context: Context): Series[] => all(context.names, liveDays(context), [["Zdb", "Zdb"]]);

const faults: readonly Wanted[] = [
  ["Ipf", "Ipf"],
  ["PSCC", "PSCC"],
  ["PEFC", "PEFC"],
];

export const faultsOfBoard = (context: Context): Series[] => all(context.names, liveDays(context), faults);

const daysOfSupply = ({ head }: Installation): DatedTest[] => supplyTests(head.facts.one("supply")?.inner as never);

export const faultsOfSupply = (installation: Installation): Series[] =>
  all(installation.names, daysOfSupply(installation), faults);

export const loopOfSupply = (installation: Installation): Series[] =>
  all(installation.names, daysOfSupply(installation), [["Ze", "Ze"]]);

export const electrodeOfSupply = (installation: Installation): Series[] =>
  all(installation.names, daysOfSupply(installation), [["RA", "electrode"]]);

/** Bonding is read with the supply or with the dead tests of a board: both are days of one conductor. */
export function bondingOf(installation: Installation): Series[] {
  const tests = [...daysOfSupply(installation), ...installation.boards.flatMap(({ context }) => deadOfBoard(context))]
    .filter(({ facts }) => facts?.list.some(({ word }) => word === "bonding"))
    .sort((a, b) => b.on.localeCompare(a.on));
  const service = ({ args }: Fact) => (args.service as { value: string } | undefined)?.value;
  const services = new Set(
    tests.flatMap(({ facts }) => facts.list.flatMap((fact) => (fact.word === "bonding" ? (service(fact) ?? []) : []))),
  );
  return all(
    installation.names,
    tests,
    [...services].map(
      (one): Wanted => [
        `The bonding of ${one}`,
        "bonding",
        (fact) => (service(fact) === one ? (fact.args.continuity as Reading | undefined) : undefined),
      ],
    ),
  );
}
