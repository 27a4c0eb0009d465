/** Checks one board, its ways first. What is found is kept with the board. */
import { memoByObject } from "../../circuit/kept.ts";
import { lazy } from "../../circuit/lazy.ts";
import { studyWay } from "../../circuit/way.ts";
import { addBits } from "../../memo/bits.ts";
import type { Board, Way } from "../../model/file.ts";
import type { BoardInPlace } from "../../model/installation.ts";
import { Reads, recordedBy } from "../../model/reads.ts";
import { checkWays, findingsOfWay, type Slices } from "./check-way.ts";
import { departuresIn, type PlacedDeparture } from "./departures.ts";
import { gradingOnBoard } from "./graded-fixes.ts";
import { type KeptForBoard, keepForBoard, keptForBoard, type PartlyKnown, StillKnown } from "./kept-findings.ts";
import { keptOnBoard } from "./outside-work.ts";
import type { BoardSubject, Finding } from "./rule.ts";
import { type Asked, type RuleSet, standardSet } from "./rule-set.ts";
import { runRules } from "./run-rules.ts";
import { atItsWay, typedAmong } from "./shared-line.ts";

interface BoardFindings {
  readonly findings: readonly Finding[];
  readonly departures: readonly PlacedDeparture[];
}

export const isChecked = (place: BoardInPlace): boolean => keptOf(place) !== undefined;

/** What is kept of a board, where all of it is checked. */
export function keptOf({ board, context }: BoardInPlace): KeptForBoard | undefined {
  const kept = keptForBoard(context.parts);
  return kept?.board === board ? kept : undefined;
}

/** What is found on the ways that are checked of a board that is begun. */
export function foundOnWays(place: BoardInPlace): BoardFindings {
  const { board, context } = place;
  const known = new StillKnown(context.parts);
  const findings = board.ways.flatMap((way) => known.ofWay(way)?.findings ?? []);
  return { findings: findings.filter(keptOnBoard(place)), departures: departuresOn(board) };
}

/** Checks some ways of a board before the rest of it: what is found is kept until the board is checked. */
export function* checkWaysInSlices(place: BoardInPlace, wanted: (way: Way) => boolean): Slices<void> {
  if (isChecked(place)) return;
  const { board, context } = place;
  yield* checkWays(board.ways.filter(wanted), place, new StillKnown(context.parts));
}

/** Whether some ways of a board are checked. */
export function hasCheckedWays(place: BoardInPlace, wanted: (way: Way) => boolean): boolean {
  const known = new StillKnown(place.context.parts);
  return isChecked(place) || place.board.ways.every((way) => !wanted(way) || known.ofWay(way) !== undefined);
}

/** Checks one board before the others: what is found is kept until all of its installation is checked. */
export function* checkBoardInSlices(place: BoardInPlace): Slices<void> {
  yield* checkBoard(place, standardSet);
}

/** All that is found on a board, as it is known or else worked out now. */
export function* checkBoard(place: BoardInPlace, set: RuleSet): Slices<BoardFindings> {
  const { board, context } = place;
  const before = keptOf(place);
  if (before) return before;
  const known = new StillKnown(context.parts);
  const departures = departuresOn(board);
  const same = known.ofBoard(board);
  if (same) {
    const kept = { ...same, board, departures };
    keepForBoard(kept);
    // An edit of the supply has every board of a large file compared: the next key does not wait for all of them.
    yield "rules";
    return kept;
  }
  const partly = known.partOfBoard(board);
  const findings: Finding[] = [];
  const reads: number[] = [];
  yield* checkWays(board.ways, place, known);
  for (const way of board.ways) {
    const ofWay = known.ofWay(way);
    for (const finding of ofWay?.findings ?? []) findings.push(finding);
    addBits(reads, ofWay?.reads ?? []);
  }
  const ofBoard = new Reads(context.parts);
  if (partly) ofBoard.add(partly.reads);
  const own: Finding[] = [];
  for (const rules of set.onBoards) {
    for (const finding of recordedBy(ofBoard, () => foundOnBoard(place, rules, partly))) own.push(finding);
    yield "rules";
  }
  const reported = recordedBy(ofBoard, () => {
    for (const finding of placedOnBoard(own, place)) findings.push(finding);
    return findings.filter(keptOnBoard(place));
  });
  addBits(reads, ofBoard.bits);
  for (const way of board.ways) addBits(reads, studyWay(way, context).reads.bits);
  const kept = {
    board,
    parts: context.parts,
    reads,
    findings: reported,
    departures,
    own,
    ownReads: ofBoard.bits,
  };
  keepForBoard(kept);
  return kept;
}

const departuresOn = memoByObject((board: Board): readonly PlacedDeparture[] => [
  ...departuresIn(board.head.facts, board, undefined),
  ...board.ways.flatMap((way) => departuresIn(way.facts, board, way)),
]);

/** A board by rules of which nothing is to be kept. */
export function* checkBoardApart(place: BoardInPlace, set: RuleSet): Slices<BoardFindings> {
  const { board, context } = place;
  const findings: Finding[] = [];
  for (const way of board.ways) {
    findings.push(...findingsOfWay(studyWay(way, context), set));
    yield;
  }
  const own = set.onBoards.flatMap((rules) => foundOnBoard(place, rules, undefined));
  for (const finding of placedOnBoard(own, place)) findings.push(finding);
  return { findings: findings.filter(keptOnBoard(place)), departures: departuresOn(board) };
}

/** What the rules of a board find, one by one: those that ask nothing that has another answer now are not run again. */
function foundOnBoard(
  { board, context }: BoardInPlace,
  rules: readonly Asked<BoardSubject>[],
  before: PartlyKnown | undefined,
): readonly Finding[] {
  const studied = lazy(() => board.ways.map((way) => studyWay(way, context)));
  const subject = {
    board,
    context,
    // Few rules ask again after an edit elsewhere, and few of those look at ways.
    get studies() {
      return studied();
    },
  };
  const found: Finding[] = [];
  const { askers } = context.parts.questions;
  runRules(rules, [{ subject, header: board.head.header, before, found }], { edition: context.edition, askers });
  return found;
}

/** Each at the way it concerns, with the fixes that its place allows. */
function placedOnBoard(found: readonly Finding[], { board, context }: BoardInPlace): readonly Finding[] {
  const typed = typedAmong(board.ways);
  const graded = gradingOnBoard({ board, context });
  return found.map((finding) => graded(typed.size > 0 ? atItsWay(finding, typed) : finding));
}
