/**
 * Runs the checks over an installation. Findings of a way are kept with the pair of way and context, and those of a
 * board with the board, so that a change costs what it touches.
 */
import { networkOf } from "../../boards/network.ts";
import { memoOfBoards } from "../../circuit/kept.ts";
import { lazy } from "../../circuit/lazy.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { checkBoard, checkBoardApart, foundOnWays, keptOf } from "./check-board.ts";
import { foundOnNode, knownOnNode } from "./check-node.ts";
import type { Slices } from "./check-way.ts";
import { departureUnused } from "./departure-checks.ts";
import {
  applyDepartures,
  type CheckResult,
  departuresIn,
  departuresInFiles,
  type PlacedDeparture,
} from "./departures.ts";
import { grading } from "./graded-fixes.ts";
import { checkFailed } from "./kept-findings.ts";
import { ofObservations } from "./observations.ts";
import { keptOnBoards } from "./outside-work.ts";
import type { Finding, Rule } from "./rule.ts";
import { type RuleSet, sortRules, standardSet } from "./rule-set.ts";
import { runRules } from "./run-rules.ts";
import { atItsWay, typedAmong } from "./shared-line.ts";

/** All findings of an installation, after departures. `rules` is for tests that look at one rule alone. */
export function checkInstallation(installation: Installation, rules?: readonly Rule[]): CheckResult {
  const slices = checkInSlices(installation, rules);
  for (;;) {
    const { done, value } = slices.next();
    if (done) return value;
  }
}

/** The same, a way at a time: it stops after each way that had to be checked, and may be left for good there. */
export function* checkInSlices(installation: Installation, rules?: readonly Rule[]): Slices<CheckResult> {
  const set = rules ? sortRules(rules) : standardSet;
  const apart = rules !== undefined;
  const found: Finding[] = [];
  const departures = departuresAbove(installation);
  for (const place of installation.boards) {
    const board = yield* apart ? checkBoardApart(place, set) : checkBoard(place, set);
    // Not spread: there can be more of them than a call takes arguments.
    for (const finding of board.findings) found.push(finding);
    for (const departure of board.departures) departures.push(departure);
  }
  const reported = keptOnBoards(installation);
  const placed = placing(installation);
  const isLarge = installation.boards.reduce((sum, { board }) => sum + board.ways.length, 0) > manyWays;
  const ofNodes = yield* foundInNetwork(installation, set, placed, apart);
  for (const finding of ofNodes.get(checkFailed) ?? []) found.push(finding);
  for (const { id, own } of set.installation) {
    const ofRule: Finding[] = [];
    const { header } = installation.head;
    runRules(own, [{ subject: installation, header, found: ofRule }], { edition: installation.edition });
    for (const finding of ofNodes.get(id) ?? []) if (reported(finding)) found.push(finding);
    for (const finding of ofRule) if (reported(finding)) found.push(placed(finding));
    if (isLarge) yield "rules";
  }
  const result = applyDepartures(found, departures, installation);
  const observed = apart ? [] : ofObservations(installation, result.findings);
  return observed.length > 0 ? applyDepartures([...found, ...observed], departures, installation) : result;
}

/** What rules find on the boards in their network, rule by rule. */
function* foundInNetwork(
  installation: Installation,
  { onNodes }: RuleSet,
  placed: (finding: Finding) => Finding,
  apart: boolean,
): Slices<ReadonlyMap<string, readonly Finding[]>> {
  const all: Finding[] = [];
  for (const node of networkOf(installation).nodes) {
    const { findings, isNew = false } = apart
      ? { findings: foundOnNode(node, onNodes).map(placed) }
      : knownOnNode(node, onNodes, placed);
    for (const finding of findings) all.push(finding);
    if (apart || isNew) yield "rules";
  }
  return Map.groupBy(all, ({ check }) => check);
}

/** Each at the way it concerns, with the fixes that its place allows. */
function placing(installation: Installation): (finding: Finding) => Finding {
  const graded = grading(installation);
  const typed = lazy(() => typedAmong(typedOnBoards(installation).flat()));
  return (finding) => (finding.fixes.length > 0 ? graded(atItsWay(finding, typed())) : finding);
}

/** The ways that a circuit type describes. */
const typedOnBoards = memoOfBoards((board) => board.ways.filter(({ type }) => type));

/**
 * What is found on the boards that are checked already, before the rules of their installation have spoken, and on the
 * ways that are checked of boards that are begun.
 */
export function foundSoFar(installation: Installation, begun: ReadonlySet<BoardInPlace>): readonly Finding[] {
  const known = installation.boards.flatMap((place) => keptOf(place) ?? (begun.has(place) ? foundOnWays(place) : []));
  const departures = [...departuresAbove(installation), ...known.flatMap((board) => [...board.departures])];
  const found = known.flatMap((board) => [...board.findings]);
  // Whether a departure is of use shows once all is checked.
  return applyDepartures(found, departures, installation).findings.filter(({ check }) => check !== departureUnused);
}

/** Those that are written outside the boards. */
function departuresAbove({ head, supply, files }: Installation): PlacedDeparture[] {
  const blocks = [head.facts, ...(supply ? [supply] : [])];
  return [...blocks.flatMap((facts) => departuresIn(facts, undefined, undefined)), ...departuresInFiles(files)];
}

/** A rule that looks at more ways than these takes a time worth stopping for. */
const manyWays = 200;
