import { Memo } from "../memo/memo.ts";
import { type Edition, editionOf } from "../tables/editions.ts";
import { Engine } from "./engine.ts";
import type { Board, BoardHead, FileModel, InstallationHead, InstallationPart } from "./file.ts";
import { boardInPlace } from "./in-place.ts";
import { type Names, namesOf } from "./names.ts";
import { SharedParts } from "./shared-parts.ts";
import { supplyAsItStands } from "./supply.ts";
import { isThreePhase, type Upstream } from "./three-lines.ts";
import { type Facts, innerOf } from "./values.ts";

/** A file of a project, by the path its host knows it by. */
interface ProjectFile {
  readonly path: string;
  readonly model: FileModel;
}

/**
 * Everything a way is judged by besides its own lines. The same object for as long as none of that changes, so a way's
 * findings are kept by the pair of them.
 */
export interface Context {
  readonly installation: InstallationHead;
  readonly supply: Facts<"supply"> | undefined;
  readonly board: BoardHead;
  /** From the nearest board to the origin. Empty for a board fed from the supply. */
  readonly upstream: readonly Upstream[];
  readonly edition: Edition | undefined;
  readonly names: Names;
  /** All of these but the edition, for whoever notes what is asked of them. */
  readonly parts: SharedParts;
}

export type { CircuitTypeFact } from "./in-place.ts";
export type { CableTypeFact, FieldFact, InstrumentFact, Names } from "./names.ts";
export type { Upstream } from "./three-lines.ts";

export interface BoardInPlace {
  readonly board: Board;
  readonly context: Context;
}

export interface Installation {
  readonly head: InstallationHead;
  readonly supply: Facts<"supply"> | undefined;
  readonly boards: readonly BoardInPlace[];
  readonly names: Names;
  readonly edition: Edition | undefined;
  /** The files of the project, the one that was asked for first. */
  readonly files: readonly FileModel[];
}

/**
 * Joins the files of a project: the first is the one that was asked for, the others are those it uses. `unread` says
 * that one of these could not be read. What an edit leaves as it was is found again with the same engine.
 */
export function installationsOf(files: readonly ProjectFile[], unread = false, engine = new Engine()): Installation[] {
  const parts = files.flatMap(({ model }) => model.installations);
  const loose = files.flatMap(({ model }) => model.boards);
  const models = files.map(({ model }) => model);
  return parts.map((part, index) => installationOf(part, index === 0 ? loose : [], models, unread, engine));
}

function installationOf(
  part: InstallationPart,
  loose: readonly Board[],
  files: readonly FileModel[],
  unread: boolean,
  engine: Engine,
): Installation {
  const { head } = part;
  const all = [...part.boards, ...loose];
  const names = namesOf(
    head,
    files,
    all.map((board) => board.head),
    unread,
  );
  const described = innerOf(head.facts.one("supply"), "supply");
  const supply = described && supplyAsItStands(described);
  const written = head.facts.one("standard")?.args.edition.value;
  const edition = written === undefined ? undefined : editionOf(written);
  const byItsName = new Map(all.map((board) => [board.head.name, board]));
  const whole = all.map((board) => {
    const three = isThreePhase({ board: board.head, upstream: upstreamOf(board.head, byItsName), supply });
    return boardInPlace(board, { types: names.circuitTypes, three });
  });
  const wholeByName = new Map(whole.map((board) => [board.head.name, board]));
  const boards = whole.map((board) => {
    const upstream = upstreamOf(board.head, wholeByName);
    return placeOf(
      board,
      contextOf({ installation: head, supply, board: board.head, upstream, edition, names }, engine),
    );
  });
  return { head, supply, boards, names, edition, files };
}

/** The way up to the origin. A circle of boards ends where it closes; a check speaks of it. */
function upstreamOf(start: BoardHead, boards: ReadonlyMap<string, Board>): Upstream[] {
  const path: Upstream[] = [];
  const seen = new Set([start]);
  let current = start;
  for (;;) {
    const { from } = current.glance;
    const next = from === undefined ? undefined : boards.get(from);
    if (!next || seen.has(next.head)) return path;
    seen.add(next.head);
    const feeder = next.ways.find((way) => way.facts.one("feeds")?.args.board.value === current.name);
    path.push({ board: next.head, feeder });
    current = next.head;
  }
}

const places = new Memo<Context, BoardInPlace>();

/** The same object for as long as neither is another. */
function placeOf(board: Board, context: Context): BoardInPlace {
  const before = places.get(context);
  if (before?.board === board) return before;
  const place = { board, context };
  places.set(context, place);
  return place;
}

/** A board that several installations share is in a context of its own in each. */
const contexts = new Memo<InstallationHead, WeakMap<BoardHead, Context>>();

function contextOf(fresh: Omit<Context, "parts">, engine: Engine): Context {
  const here = contexts.get(fresh.installation) ?? new WeakMap<BoardHead, Context>();
  const before = here.get(fresh.board);
  const same =
    before &&
    before.supply === fresh.supply &&
    before.names === fresh.names &&
    before.upstream.length === fresh.upstream.length &&
    before.upstream.every(
      (up, index) => up.board === fresh.upstream[index]?.board && up.feeder === fresh.upstream[index]?.feeder,
    );
  if (same) return before;
  const context = { ...fresh, parts: new SharedParts(fresh, engine) };
  here.set(fresh.board, context);
  contexts.set(fresh.installation, here);
  return context;
}
