/** Names: where each is defined and where it is used, across the files of a project. */

import type { NameKind, WordRow } from "../../grammar/params.ts";
import { type BlockKind, rowOf } from "../../grammar/vocabulary.ts";
import { Memo } from "../memo/memo.ts";
import { isWord, valuesAt } from "../model/fact-values.ts";
import type { Board, Way } from "../model/file.ts";
import type { Fact, Facts, Path, Val } from "../model/values.ts";
import type { Spot } from "../rules/frame/rule.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { type Cursor, type CursorContext, contextAt } from "./cursor.ts";

/** A name where it stands. RCDs and ways belong to their board, points to their way, the rest to the whole project;
 * a containment belongs to the board or the installation it is defined in. */
export interface Named {
  readonly names: NameKind;
  readonly name: Val<string>;
  readonly defines: boolean;
  readonly builtin: boolean;
  readonly fact: Fact;
  readonly board: Board | undefined;
  readonly way: Way | undefined;
}

export const spotOf = ({ fact, name }: Named): Spot => ({ segment: fact.segment, start: name.start, end: name.end });

/** The name under the cursor. */
export function nameAt(snapshot: Snapshot, cursor: Cursor): Named | undefined {
  return nameIn(snapshot, contextAt(snapshot, cursor), cursor.offset);
}

export function nameIn(snapshot: Snapshot, spotted: CursorContext, offset: number): Named | undefined {
  const { fact, around, segment } = spotted;
  if (!fact) return undefined;
  const board = boardsIn(snapshot).find(({ segments }) => segments.includes(segment));
  const way = board?.ways.find((one) => one.segment === segment);
  const found = namesIn(around.kind, fact, board, way);
  return found.find(({ name }) => offset >= name.start && offset <= name.end);
}

/** Every place a name stands, definitions and uses, in the order of the files. */
export function occurrences(snapshot: Snapshot, wanted: Named): Named[] {
  const found = wanted.way && wanted.names === "point" ? inWay(wanted.way, wanted.board) : undefined;
  const inBoard = wanted.board && (wanted.names === "rcd" || wanted.names === "way");
  const shared = wanted.names === "containment" ? inContainmentScope(snapshot, wanted) : undefined;
  const all = found ?? shared ?? (inBoard && wanted.board ? inOneBoard(wanted.board) : everywhere(snapshot));
  const same = all.filter(({ names, name }) => names === wanted.names && name.value === wanted.name.value);
  return wanted.names === "point" ? firstDefines(same) : same;
}

/** A board's own containment hides one of the installation that has the same name. */
function inContainmentScope(snapshot: Snapshot, { board, name }: Named): Named[] {
  const isOwn = (one: Board): boolean =>
    inFacts("board", one.head.facts, one, undefined).some(
      ({ names, defines, name: own }) => names === "containment" && defines && own.value === name.value,
    );
  if (board && isOwn(board)) return inOneBoard(board);
  return everywhere(snapshot).filter((one) => !one.board || !isOwn(one.board));
}

export const definitions = (snapshot: Snapshot, wanted: Named): Named[] =>
  occurrences(snapshot, wanted).filter(({ defines }) => defines);

/** All names of a kind that are defined where the cursor is, each once. */
export function definedNames(
  snapshot: Snapshot,
  kind: NameKind,
  board: Board | undefined,
  way: Way | undefined,
): Named[] {
  const all =
    kind === "point"
      ? way
        ? firstDefines(inWay(way, board))
        : []
      : kind === "rcd" || kind === "way"
        ? board
          ? inOneBoard(board)
          : []
        : kind === "containment" && board
          ? [...inOneBoard(board), ...headsOnly(snapshot)]
          : headsOnly(snapshot);
  const seen = new Set<string>();
  return all.filter((one) => {
    if (!one.defines || one.names !== kind || seen.has(one.name.value)) return false;
    seen.add(one.name.value);
    return true;
  });
}

/** A point is named by the run that first reaches it. */
function firstDefines(points: readonly Named[]): Named[] {
  const seen = new Set<string>();
  return points.map((one) => {
    if (one.names !== "point" || !one.defines) return one;
    const first = !seen.has(one.name.value);
    seen.add(one.name.value);
    return { ...one, defines: first };
  });
}

function everywhere(snapshot: Snapshot): Named[] {
  return snapshot.files.flatMap(({ model }) => [
    ...inFacts("file", model.facts, undefined, undefined),
    ...model.installations.flatMap(({ head, boards }) => [
      ...inFacts("installation", head.facts, undefined, undefined),
      ...boards.flatMap(inOneBoard),
    ]),
    ...model.boards.flatMap(inOneBoard),
  ]);
}

/** Without the ways, which define none of the names that the whole project shares. */
function headsOnly(snapshot: Snapshot): Named[] {
  return snapshot.files.flatMap(({ model }) => [
    ...inFacts("file", model.facts, undefined, undefined),
    ...model.installations.flatMap(({ head, boards }) => [
      ...inFacts("installation", head.facts, undefined, undefined),
      ...boards.flatMap((board) => namesIn("installation", board.head.header, board, undefined)),
    ]),
    ...model.boards.flatMap((board) => namesIn("installation", board.head.header, board, undefined)),
  ]);
}

const inOneBoard = (board: Board): Named[] => [
  ...namesIn("installation", board.head.header, board, undefined),
  ...inFacts("board", board.head.facts, board, undefined),
  ...board.ways.flatMap((way) => inWay(way, board)),
];

const inWay = (way: Way, board: Board | undefined): Named[] => [
  ...namesIn("board", way.header, board, way),
  ...inFacts("way", way.facts, board, way),
];

function inFacts(kind: BlockKind, facts: Facts, board: Board | undefined, way: Way | undefined): Named[] {
  return [...facts.list, ...facts.struckOut].flatMap((fact) => [
    ...namesIn(kind, fact, board, way),
    ...(fact.inner ? inFacts(fact.inner.kind, fact.inner, board, way) : []),
  ]);
}

type Slot = readonly [param: string, what: "define" | "ref" | "path", names: NameKind, builtin: ReadonlySet<string>];

const nameSlots = new Memo<WordRow, readonly Slot[]>();

function slotsOf(kind: BlockKind, word: string): readonly Slot[] {
  const row = rowOf(kind, word);
  return row ? nameSlots.of(row, findSlots) : [];
}

const findSlots = ({ params }: WordRow): readonly Slot[] =>
  Object.entries(params).flatMap(([param, { accepts }]): Slot[] => {
    if (accepts.kind === "define") return [[param, "define", accepts.names, new Set()]];
    if (accepts.kind === "ref") return [[param, "ref", accepts.names, new Set(Object.keys(accepts.builtin ?? {}))]];
    return accepts.kind === "path" ? [[param, "path", "point", new Set()]] : [];
  });

function namesIn(kind: BlockKind, fact: Fact, board: Board | undefined, way: Way | undefined): Named[] {
  const slots = slotsOf(kind, fact.word);
  if (slots.length === 0) return [];
  return slots.flatMap(([param, what, names, builtin]) => {
    return valuesAt(fact, param).flatMap((value): Named[] => {
      if ("legs" in value) return placesIn(value, fact, board, way);
      if (!isWord(value)) return [];
      return [{ names, name: value, defines: what === "define", builtin: builtin.has(value.value), fact, board, way }];
    });
  });
}

/** Where a run begins and ends at the board it means the board, by its name. */
function placesIn(path: Path, fact: Fact, board: Board | undefined, way: Way | undefined): Named[] {
  return [path.from, ...path.legs.map(({ to }) => to)].map((name, index) => {
    const isBoard = name.value === board?.head.name;
    const names = isBoard ? ("board" as const) : ("point" as const);
    return { names, name, defines: !isBoard && index > 0, builtin: false, fact, board, way };
  });
}

export const boardsIn = ({ files }: Pick<Snapshot, "files">): readonly Board[] =>
  files.flatMap(({ model }) => [...model.installations.flatMap(({ boards }) => boards), ...model.boards]);
