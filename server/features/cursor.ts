/** What stands at a place of a file: the block, the statement, the token. Every feature starts here. */
import type { IToken } from "chevrotain";
import { endOf } from "../../grammar/lexer.ts";
import type { WordRow } from "../../grammar/params.ts";
import { type Block, parse, type Statement } from "../../grammar/parser.ts";
import { type BlockKind, openedBy, rowOf } from "../../grammar/vocabulary.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import { boundOf, type InstallationPart } from "../model/file.ts";
import type { BoardInPlace, Installation } from "../model/installation.ts";
import { type AnyValue, type Fact, Facts } from "../model/values.ts";
import type { Segment } from "../syntax/split.ts";
import type { Snapshot } from "../workspace/workspace.ts";

/** An offset in a segment: where the cursor is. */
export interface Cursor {
  readonly segment: Segment;
  readonly offset: number;
}

/** A block round the cursor, with the statement that opens it; the outermost has none. */
interface EnclosingBlock {
  readonly kind: BlockKind;
  readonly header: Statement | undefined;
  readonly statements: readonly Statement[];
  readonly facts: Facts;
}

export interface CursorContext {
  readonly segment: Segment;
  readonly around: EnclosingBlock;
  readonly outer: readonly EnclosingBlock[];
  readonly statement: Statement | undefined;
  readonly row: WordRow | undefined;
  /** The statement as the model understood it. */
  readonly fact: Fact | undefined;
  readonly token: IToken | undefined;
  readonly comments: readonly IToken[];
}

/** Segments with the kind of block each stands in. */
export function* withEnclosingBlock(segments: readonly Segment[]): Generator<{ segment: Segment; within: BlockKind }> {
  const stack: BlockKind[] = [];
  for (const segment of segments) {
    if (segment.ends) stack.length = Math.max(0, stack.length - segment.ends);
    if (segment.kind === "open" && !(segment.word === "board" && stack.at(-1) === "installation")) stack.length = 0;
    yield { segment, within: stack.at(-1) ?? "file" };
    if (segment.kind === "open") stack.push(segment.word as BlockKind);
    else if (segment.kind === "close" && segment.fault !== "extra-close") stack.pop();
  }
}

/** The kind of block a segment stands in. */
export function withinOf(snapshot: Snapshot, wanted: Segment): BlockKind {
  for (const { segment, within } of withEnclosingBlock(snapshot.file.document.segments))
    if (segment === wanted) return within;
  return "file";
}

export function contextAt(snapshot: Snapshot, { segment, offset }: Cursor): CursorContext {
  const within = withinOf(snapshot, segment);
  const parsed = parse(segment.text, segment.mends);
  const { facts } = boundOf(segment, within);
  const outer: EnclosingBlock[] = [];
  let around: EnclosingBlock = { kind: within, header: undefined, statements: parsed.statements, facts };
  for (;;) {
    const statement = around.statements.findLast((one) => offset >= one.start && offset <= endOfStatement(one));
    const row = statement && rowOf(around.kind, statement.word.image);
    const opens = openedBy(row);
    const fact = statement && around.facts.list.find((one) => one.start === statement.start);
    if (statement?.block && isInside(statement.block, offset) && opens) {
      outer.unshift(around);
      around = {
        kind: opens,
        header: statement,
        statements: statement.block.statements,
        facts: fact?.inner ?? emptyFacts(around.facts),
      };
      continue;
    }
    const tokens = statement ? [statement.word, ...statement.args] : [];
    const token =
      tokens.find((one) => offset >= one.startOffset && offset < endOf(one)) ??
      tokens.find((one) => offset === endOf(one));
    return { segment, around, outer, statement, row, fact, token, comments: parsed.comments };
  }
}

const emptyFacts = (of: Facts): Facts => new Facts(of.kind, [], []);

/** A block that is not closed yet goes on to where the next part begins: that is where a person is typing. */
const endOfStatement = ({ block, end }: Statement): number => (block && !block.close ? Number.POSITIVE_INFINITY : end);

const isInside = ({ open, close }: Block, offset: number): boolean =>
  offset >= endOf(open) && (close === undefined || offset <= close.startOffset);

/** The way a segment holds, studied in its place. */
export function studyAt(snapshot: Snapshot, segment: Segment): WayStudy | undefined {
  if (segment.word !== "way") return undefined;
  for (const installation of snapshot.installations) {
    for (const { board, context } of installation.boards) {
      const way = board.ways.find((one) => one.segment === segment);
      if (way) return studyWay(way, context);
    }
  }
  return undefined;
}

/** The board a segment belongs to, with all it is judged by. */
export function boardAt(snapshot: Snapshot, segment: Segment): BoardInPlace | undefined {
  for (const installation of snapshot.installations) {
    const place = installation.boards.find(({ board }) => board.segments.includes(segment));
    if (place) return place;
  }
  return undefined;
}

export function installationAt(snapshot: Snapshot, segment: Segment): Installation | undefined {
  const { installations } = snapshot;
  const board = boardAt(snapshot, segment);
  if (board) return installations.find(({ boards }) => boards.includes(board));
  const part = partAt(snapshot, segment);
  return installations.find(({ head }) => head === part?.head) ?? installations[0];
}

function partAt(snapshot: Snapshot, segment: Segment): InstallationPart | undefined {
  const { installations } = snapshot.file.model;
  if (installations.length < 2) return installations[0];
  const { segments } = snapshot.file.document;
  const index = segments.indexOf(segment);
  return installations.findLast(({ head }) => segments.indexOf(head.header.segment) <= index);
}

/** The argument an offset is in. */
export function argAt(fact: Fact | undefined, offset: number): [name: string, value: AnyValue] | undefined {
  for (const [name, given] of Object.entries(fact?.args ?? {})) {
    for (const value of [given ?? []].flat()) {
      if (offset >= value.start && offset <= value.end) return [name, value];
    }
  }
  return undefined;
}
