/**
 * Ways as they stand in their installation: with what their circuit type says of them, on the line their number names,
 * and each reading on a line of its own. All that follows sees whole ways and need not know
 * how much of one was written where.
 */
import { Memo } from "../memo/memo.ts";
import { apart, saidBeside } from "./beside.ts";
import { type Board, BoardOnDemand, sameItems, type Way } from "./file.ts";
import { namedLine } from "./three-lines.ts";
import { asLiteral, type Fact, type FactOf, Facts } from "./values.ts";

export type CircuitTypeFact = FactOf<"file", "circuit-type">;

interface Surroundings {
  readonly types: ReadonlyMap<string, readonly CircuitTypeFact[]>;
  /** Whether the board has three lines. */
  readonly three: boolean;
}

interface BoardKept {
  readonly types: Surroundings["types"];
  readonly three: boolean;
  readonly board: Board;
}

interface WayKept {
  readonly type: CircuitTypeFact | undefined;
  readonly three: boolean;
  readonly way: Way;
}

const waysKept = new Memo<Way, WayKept>();
const boardsKept = new Memo<Board, BoardKept>();

/** The same board where nothing in it depends on what stands elsewhere; the same as before where that did not change. */
export function boardInPlace(board: Board, round: Surroundings): Board {
  const before = boardsKept.get(board);
  const same = before && before.three === round.three && (before.types === round.types || !mayNameTypes(before.board));
  if (same) return before.board;
  const whole = isRead(board)
    ? completedBoard(board, before && isRead(before.board) ? before.board : undefined, round)
    : new BoardOnDemand(board.head, board.segments, () => board.ways.map((way) => wayInPlace(way, round)));
  boardsKept.set(board, { ...round, board: whole });
  return whole;
}

const isRead = (board: Board): boolean => !(board instanceof BoardOnDemand) || board.isRead;

/** Whether what a type says may matter to a board; of one that nobody has read that is not known. */
const mayNameTypes = (board: Board): boolean => !isRead(board) || board.ways.some(({ header }) => header.args.as);

function completedBoard(board: Board, before: Board | undefined, round: Surroundings): Board {
  const ways = board.ways.map((way) => wayInPlace(way, round));
  if (sameItems(ways, board.ways)) return board;
  if (before && sameItems(ways, before.ways)) return before;
  return { head: board.head, segments: board.segments, ways };
}

function wayInPlace(way: Way, { types, three }: Surroundings): Way {
  const name = way.header.args.as?.value;
  const type = name === undefined ? undefined : types.get(name)?.[0];
  const before = waysKept.get(way);
  if (before && before.type === type && before.three === three) return before.way;
  const fresh = completed(way, type, three);
  if (fresh !== way) waysKept.set(way, { type, three, way: fresh });
  return fresh;
}

/** A way with all that is said of it elsewhere. */
export function completed(way: Way, type: CircuitTypeFact | undefined, three: boolean): Way {
  const named = way.header.args.as !== undefined;
  const line = three && !way.facts.has("phase") ? lineOfName(way) : undefined;
  const shorthand = hasShorthand(way.facts);
  if (!named && !line && !shorthand) return way;
  const shared = type?.inner;
  const kind = way.kind ?? type?.args.kind?.value;
  const list = [...way.facts.list, ...(line ? [line] : []), ...(shared ? taken(way.facts, shared) : [])];
  // A type that nothing defines may say anything: nothing is missing then, it is not known.
  const broken = [...way.facts.broken, ...(shared?.broken ?? []), ...(named && !type ? sharedWords : [])];
  const facts = new Facts("way", list, broken, way.facts.struckOut);
  const whole = { ...way, kind, facts, ...(type ? { type } : {}) };
  return shorthand ? { ...whole, facts: writtenOut(facts, isOnThree(whole, three)) } : whole;
}

const sharedWords: readonly string[] = ["device", "rcd", "behind", "cable", "route", "serves", "place"];

/** Words of the type's own record. */
const kept: ReadonlySet<string> = new Set(["note", "detail"]);

/** What the type says in words that the way itself does not have. */
const taken = (own: Facts<"way">, shared: Facts): readonly Fact[] =>
  shared.list.filter(({ word }) => !kept.has(word) && !own.has(word as "device"));

function lineOfName(way: Way): Fact | undefined {
  const { header, segment } = way;
  const line = namedLine(way);
  if (line === undefined) return undefined;
  const { start, end } = header.args.id;
  const value = { value: line, start: end - line.length, end };
  return { word: "phase", wordEnd: value.start, args: { phase: value }, provenance: "measured", segment, start, end };
}

/** As a way is taken to have three lines: it says so, or it feeds a board of three with cores enough. */
function isOnThree({ facts, kind }: Way, three: boolean): boolean {
  const phase = facts.one("phase")?.args.phase.value;
  if (phase !== undefined) return phase === "three";
  const cores = facts.one("cable")?.args.cores?.value;
  return kind === "feeder" && three && (cores === undefined || cores > 3);
}

const hasShorthand = (facts: Facts<"way">): boolean =>
  facts.list.some(({ inner }) =>
    inner?.list.some((fact) => (fact.word === "insulation" && fact.args.each) || saidBeside(fact) !== undefined),
  );

/** The blocks of tests with each reading on a line of its own. */
function writtenOut(facts: Facts<"way">, three: boolean): Facts<"way"> {
  const neutral = !three || !hasNoNeutral(facts);
  const list = facts.list.map((fact) =>
    fact.inner ? { ...asLiteral(fact), inner: inPairs(fact.inner, three, neutral) } : fact,
  );
  return new Facts("way", list, facts.broken, facts.struckOut);
}

/** Three lines and at most a protective conductor besides. */
function hasNoNeutral(facts: Facts<"way">): boolean {
  const cable = facts.one("cable")?.args;
  if (cable?.cores?.value === 3) return true;
  return cable?.cores?.value === 4 && cable.construction?.value === "multicore" && !!cable.cpc && !cable.cpcBy;
}

function inPairs(block: Facts, three: boolean, neutral: boolean): Facts {
  const list = block.list.flatMap((fact) =>
    fact.word === "insulation" ? [withPairs(fact, three, neutral)] : apart(fact),
  );
  return new Facts(block.kind, list, block.broken);
}

function withPairs(fact: Fact, three: boolean, neutral: boolean): Fact {
  const { each, ...rest } = fact.args;
  if (!each) return fact;
  const toEarth = rest.joined ? ["L-E"] : ["L-E", ...(neutral ? ["L-N", "N-E"] : [])];
  const pairs = three && !rest.joined ? ["L-L", ...toEarth] : toEarth;
  return { ...asLiteral(fact), args: { ...Object.fromEntries(pairs.map((pair) => [pair, each])), ...rest } };
}
