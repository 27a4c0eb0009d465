/** What is tested at the origin and at a board, beside its ways. */

import { expectedResistance, resistancePerMetre } from "../calc/conductor-resistance.ts";
import { faultCurrent } from "../calc/fault-current.ts";
import { insulationRule, parallelInsulation } from "../calc/insulation.ts";
import type { Calculated } from "../calc/result.ts";
import { boardImpedance } from "../circuit/board-impedance.ts";
import { breakingOf, conditionalAt } from "../circuit/breaking.ts";
import { memoOfPlaces } from "../circuit/kept.ts";
import { rcdsOfBoard } from "../circuit/rcds.ts";
import { originSupply, studySupply, testsOf } from "../circuit/supply.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import type { Way } from "../model/file.ts";
import type { Context, Installation } from "../model/installation.ts";
import { isThreePhase } from "../model/three-lines.ts";
import { exact, type Fact, type FactOf } from "../model/values.ts";
import { bondsSomething } from "./earthing.ts";
import { electrodeLimit, relyingOnOrigin } from "./electrode.ts";
import { boardInsulation, insulationParts } from "./insulation.ts";
import { planRcd } from "./plan-rcd.ts";
import { bound, type Expected, expecting, type PlannedTest, recordedAs, sayings, word } from "./planned.ts";
import { buttonOnBoard, liveOfBoard, rcdTestsOfBoard } from "./rcd-tests.ts";

type Bonding = FactOf<"supply", "bonding">;

/** The earthing, the bonding and the supply itself. */
export function planSupply(installation: Installation): PlannedTest[] {
  const { supply, boards } = installation;
  if (!supply) return [];
  const { earthing, U0, threePhase } = originSupply(supply);
  const tested = boards.flatMap(({ board }) => testsOf<"boardDead">(board.head.facts.all("dead")));
  const Ze = supply.one("Ze");
  const impedance = Ze && exact(Ze.args.value);
  const conductor = supply.one("earthing-conductor");
  const fault = impedance && earthing !== "TT" ? faultCurrent(U0, impedance) : undefined;
  const current = (name: string, text: string, fact: Fact | undefined, expected = false): PlannedTest => ({
    step: "fault",
    live: true,
    name: `${name}, ${text}`,
    unit: "kA",
    expected: expected ? expecting(fault, "kA") : undefined,
    bounds: bound("most", leastOf(weakestAtOrigin(installation)), "kA"),
    recorded: recordedAs(fact, "value"),
  });
  return [
    ...(conductor ? [reading("continuity", "Earthing conductor", conductor, "continuity")] : []),
    ...supply
      .all("bonding")
      .filter(bondsSomething)
      .map((bonding) => {
        const again = tested.flatMap(({ facts }) => facts.all("bonding"));
        return bondingTest(
          bonding,
          again.find(({ args }) => args.service.value === bonding.args.service.value),
        );
      }),
    ...(earthing === "TT"
      ? [
          {
            ...reading("electrode", "RA, the electrode", supply.one("electrode"), "value"),
            bounds: bound("most", electrodeLimit(relyingOnOrigin({ supply, boards })), "Ω"),
          },
        ]
      : []),
    { ...reading("loop", "Ze, the supply's own loop", Ze, "value"), live: true },
    current("PEFC", "line to earth", supply.one("PEFC"), true),
    current("PSCC", "line to neutral", supply.one("PSCC")),
    current("Ipf", "the larger", supply.one("Ipf")),
    word("polarity", "Polarity at the origin", supply.one("polarity")),
    ...(threePhase ? [word("phase-sequence", "Phase sequence at the origin", supply.one("phase-sequence"))] : []),
  ];
}

/**
 * What the weakest device of a board breaks. Where the board is marked with a conditional rating, its fuse breaks what its
 * devices do not, and no device of it is the limit.
 */
const weakestOf = (studies: readonly WayStudy[]): Calculated | undefined =>
  leastOf(
    studies
      .filter(({ isSpare, context }) => !isSpare && conditionalAt(context) === undefined)
      .map((study) => breakingOf(study)),
  );

/** The same of each board that is fed from the supply. */
const weakestAtOrigin = memoOfPlaces(({ board, context }) =>
  board.head.facts.one("fed-from")?.args.from.value === "supply"
    ? weakestOf(board.ways.map((way) => studyWay(way, context)))
    : undefined,
);

const leastOf = (all: readonly (Calculated | undefined)[]): Calculated | undefined =>
  all.flatMap((one) => one ?? []).toSorted((one, other) => one.value - other.value)[0];

const reading = (step: PlannedTest["step"], name: string, fact: Fact | undefined, arg: string): PlannedTest => ({
  step,
  live: false,
  name,
  unit: "Ω",
  bounds: [],
  recorded: recordedAs(fact, arg),
});

/** A long conductor reads more than a short one: each is expected to read what its own length and size give. */
function bondingTest(bonding: Bonding, again: Bonding | undefined): PlannedTest {
  const { service, size, length } = bonding.args;
  const perMetre = size && resistancePerMetre(size.value);
  const recorded = recordedAs(again, "continuity") ?? recordedAs(bonding, "continuity");
  return {
    ...reading("continuity", `Bonding of ${service.value}`, undefined, "continuity"),
    expected: perMetre && length ? expecting(expectedResistance(perMetre, length.value), "Ω") : undefined,
    recorded,
  };
}

/** The tests of a board; its ways decide what its electrode and its fault current are compared with. */
export function planBoard(context: Context, ways: readonly Way[] = []): PlannedTest[] {
  const studies = ways.map((way) => studyWay(way, context));
  return [...supplementaryTests(context), ...insulationTests(context, studies), ...boardLive(context, studies)];
}

/** Bonding of a place is measured between the parts it joins, not end to end. */
const supplementaryTests = ({ board }: Context): PlannedTest[] =>
  board.facts.all("supplementary-bonding").map((fact) => {
    const { place, title } = fact.args;
    return reading("continuity", `Supplementary bonding, ${title?.value ?? place.value}`, fact, "continuity");
  });

function insulationTests(context: Context, studies: readonly WayStudy[]): PlannedTest[] {
  const test = boardInsulation(context);
  const { edition } = context;
  const bounds = edition ? bound("least", insulationRule("up-to-500", edition).minimum, "MΩ") : [];
  const read = [...(test?.values ?? []), ...(test?.absent ?? [])].map(({ pair, fact }) => ({
    pair,
    fact,
  }));
  const rows = read.length > 0 ? read : [{ pair: "L-E", fact: undefined }];
  return rows.map(({ pair, fact }) => ({
    step: "insulation",
    live: false,
    name: read.length > 0 ? `${pair}, the whole board` : "L and N together to E, the whole board",
    unit: "MΩ",
    get expected() {
      return pair === "L-E" ? wholeBoard(studies, fact === undefined || fact.args.joined !== undefined) : undefined;
    },
    bounds,
    recorded: recordedAs(fact, pair),
  }));
}

/** Its circuits in parallel, once each was read: by those off the scale the whole is at least that. */
function wholeBoard(studies: readonly WayStudy[], joined: boolean): Expected | undefined {
  const circuits = studies.filter(({ isSpare }) => !isSpare);
  const parts = circuits.map((study) => insulationParts(study, joined));
  const read = parts.flat().map(({ value }) => value.quantity);
  if (parts.some((of) => of.length === 0) || read.some(({ sign, value }) => sign === "<" || value <= 0))
    return undefined;
  const whole = expecting(parallelInsulation(read.map(({ value }) => value)), "MΩ");
  const isAtLeast = read.some(({ sign }) => sign === ">");
  if (!whole) return undefined;
  // A line of fifty terms tells nobody more than what they are.
  const working = `1 / Σ (1/Ri) of the ${read.length} readings of its circuits`;
  return { ...whole, working, text: isAtLeast ? `${sayings.least} ${whole.text}` : whole.text };
}

function boardLive(context: Context, studies: readonly WayStudy[]): PlannedTest[] {
  const { facts } = context.board;
  const relying = studies.filter((study) => study.supply.earthingFact === facts.one("earthing"));
  const tests = liveOfBoard(context);
  const inTests = (name: "Zdb" | "Ipf" | "polarity" | "phase-sequence") =>
    tests.map((test) => test.facts.one(name)).find((fact) => fact !== undefined) ?? facts.one(name);
  const supply = studySupply(context);
  const three = isThreePhase(context);
  const impedance = boardImpedance(context);
  const rcdTests = rcdTestsOfBoard(context);
  return [
    ...(facts.has("earthing")
      ? [
          {
            ...reading("electrode", "RA, the board's own electrode", facts.one("electrode"), "value"),
            bounds: bound("most", electrodeLimit(relying), "Ω"),
          },
        ]
      : []),
    { ...reading("loop", "Zdb, at the board", inTests("Zdb"), "value"), live: true },
    {
      step: "fault",
      live: true,
      name: "Ipf, the larger at the board",
      unit: "kA",
      expected:
        impedance && supply.earthing !== "TT" && !three
          ? expecting(faultCurrent(supply.U0, impedance.value), "kA")
          : undefined,
      bounds: bound("most", weakestOf(studies), "kA"),
      recorded: recordedAs(inTests("Ipf"), "value"),
    },
    ...rcdsOfBoard(context.board).flatMap((rcd) =>
      planRcd(
        rcd,
        context.edition,
        rcdTests.filter(({ device }) => device?.fact === rcd.fact),
        buttonOnBoard(rcd, context),
      ).map((test) => (rcd.name === undefined ? test : { ...test, name: `${rcd.name}: ${test.name}` })),
    ),
    word("polarity", "Polarity at the board", inTests("polarity")),
    ...(three ? [word("phase-sequence", "Phase sequence at the board", inTests("phase-sequence"))] : []),
  ];
}
