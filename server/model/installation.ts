import { type Edition, editionOf } from "../tables/editions.ts";
import type { Board, BoardHead, FileModel, InstallationHead, InstallationPart } from "./file.ts";
import { sameItems } from "./file.ts";
import { boardInPlace, type CircuitTypeFact } from "./in-place.ts";
import { supplyAsItStands } from "./supply.ts";
import { isThreePhase, type Upstream } from "./three-lines.ts";
import type { FactOf, Facts } from "./values.ts";

/** A file of a project, by the path its host knows it by. */
export interface ProjectFile {
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
}

/** What may be referred to, across all files of the project. */
export interface Names {
  readonly instruments: ReadonlyMap<string, readonly InstrumentFact[]>;
  readonly cableTypes: ReadonlyMap<string, readonly CableTypeFact[]>;
  readonly circuitTypes: ReadonlyMap<string, readonly CircuitTypeFact[]>;
  readonly boards: ReadonlyMap<string, readonly BoardHead[]>;
  /** Words of lines outside the boards that could not be understood: each may have defined a name. */
  readonly unclear: ReadonlySet<string>;
  /** Details of its own that the schedule declares. */
  readonly fields: readonly FieldFact[];
  /** Whether a file that is used could not be read: it may define more. */
  readonly incomplete: boolean;
}

export type InstrumentFact = FactOf<"file", "instrument">;
export type { CircuitTypeFact } from "./in-place.ts";
export type { Upstream } from "./three-lines.ts";
export type FieldFact = FactOf<"file", "field">;
export type CableTypeFact = FactOf<"file", "cable-type">;

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
 * that one of these could not be read.
 */
export function installationsOf(files: readonly ProjectFile[], unread = false): Installation[] {
  const parts = files.flatMap(({ model }) => model.installations);
  const loose = files.flatMap(({ model }) => model.boards);
  const models = files.map(({ model }) => model);
  return parts.map((part, index) => installationOf(part, index === 0 ? loose : [], models, unread));
}

function installationOf(
  part: InstallationPart,
  loose: readonly Board[],
  files: readonly FileModel[],
  unread: boolean,
): Installation {
  const { head } = part;
  const all = [...part.boards, ...loose];
  const names = namesOf(head, files, all, unread);
  const described = head.facts.one("supply")?.inner as Facts<"supply"> | undefined;
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
    return { board, context: contextOf({ installation: head, supply, board: board.head, upstream, edition, names }) };
  });
  return { head, supply, boards, names, edition, files };
}

/** The way up to the origin. A circle of boards ends where it closes; a check speaks of it. */
function upstreamOf(start: BoardHead, boards: ReadonlyMap<string, Board>): Upstream[] {
  const path: Upstream[] = [];
  const seen = new Set([start]);
  let current = start;
  for (;;) {
    const from = current.facts.one("fed-from")?.args.from.value;
    const next = from === undefined ? undefined : boards.get(from);
    if (!next || seen.has(next.head)) return path;
    seen.add(next.head);
    const feeder = next.ways.find((way) => way.facts.one("feeds")?.args.board.value === current.name);
    path.push({ board: next.head, feeder });
    current = next.head;
  }
}

/** A board that several installations share is in a context of its own in each. */
const contexts = new WeakMap<InstallationHead, WeakMap<BoardHead, Context>>();

function contextOf(fresh: Context): Context {
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
  here.set(fresh.board, fresh);
  contexts.set(fresh.installation, here);
  return fresh;
}

/** A block whose first line is still being typed has no name yet. */
const isNamed = ({ args }: { readonly args: { readonly name?: unknown } }): boolean => args.name !== undefined;

interface NamesKept {
  readonly facts: readonly unknown[];
  readonly heads: readonly BoardHead[];
  readonly names: Names;
}

const namesKept = new WeakMap<InstallationHead, NamesKept>();

function namesOf(
  head: InstallationHead,
  files: readonly FileModel[],
  boards: readonly Board[],
  incomplete: boolean,
): Names {
  const instrumentFacts = [
    ...files.flatMap(({ facts }) => facts.all("instrument")),
    ...head.facts.all("instrument"),
  ].filter(isNamed);
  const cableFacts = [...files.flatMap((file) => file.facts.all("cable-type")), ...head.facts.all("cable-type")];
  const circuitFacts = [
    ...files.flatMap((file) => file.facts.all("circuit-type")),
    ...head.facts.all("circuit-type"),
  ].filter(isNamed);
  const unclear = [...files.flatMap((file) => file.facts.broken), ...head.facts.broken];
  const fields = [...files.flatMap((file) => file.facts.all("field")), ...head.facts.all("field")];
  const facts = [...instrumentFacts, ...cableFacts, ...circuitFacts, ...fields, ...unclear];
  const heads = boards.map((board) => board.head);
  const before = namesKept.get(head);
  const same = before && before.names.incomplete === incomplete;
  if (same && sameItems(before.facts, facts) && sameItems(before.heads, heads)) return before.names;
  const names: Names = {
    instruments: byName(instrumentFacts, (fact) => fact.args.name.value),
    cableTypes: byName(cableFacts, (fact) => fact.args.name.value),
    circuitTypes: byName(circuitFacts, (fact) => fact.args.name.value),
    boards: byName(heads, (board) => board.name),
    unclear: new Set(unclear),
    fields,
    incomplete,
  };
  namesKept.set(head, { facts, heads, names });
  return names;
}

function byName<T>(items: readonly T[], nameOf: (item: T) => string): Map<string, T[]> {
  const map = new Map<string, T[]>();
  for (const item of items) {
    const name = nameOf(item);
    const before = map.get(name);
    if (before) before.push(item);
    else map.set(name, [item]);
  }
  return map;
}
