/** The boards of an installation as the tree they are fed by. */
import type { Board } from "../model/file.ts";
import type { BoardInPlace, Context, Installation } from "../model/installation.ts";
import { keptWith } from "./kept.ts";
import { lazy } from "./lazy.ts";
import { studySupply } from "./supply.ts";
import { studyWay, type WayStudy } from "./way.ts";

/** A board with what feeds it and what it feeds. */
export interface BoardNode extends BoardInPlace {
  readonly parent: BoardNode | undefined;
  /** The way of the parent that feeds it, if the schedule says which. */
  readonly feeder: WayStudy | undefined;
  readonly children: readonly BoardNode[];
  readonly threePhase: boolean;
  /** Its ways in the order of the file. */
  readonly studies: readonly WayStudy[];
}

export interface Network {
  readonly nodes: readonly BoardNode[];
  /** The boards fed from the supply. */
  readonly origins: readonly BoardNode[];
  nodeOf(board: Board): BoardNode | undefined;
}

/** The network of an installation; the same one for as long as the installation stays the same. */
export const networkOf = keptWith((installation: Installation): Network => {
  const { boards } = installation;
  const byHead = new Map(boards.map((place) => [place.board.head, place] as const));
  const parentOf = ({ context }: BoardInPlace): BoardInPlace | undefined => {
    const above = context.upstream[0]?.board;
    return above && byHead.get(above);
  };
  // Boards that feed each other in a circle have no origin: nothing is summed along them.
  const sound = boards.filter((place) => !inCircle(place, parentOf));
  const built = new Map<BoardInPlace, BoardNode>();
  const below = new Map<BoardInPlace, BoardInPlace[]>();
  for (const place of sound) {
    const parent = parentOf(place);
    if (parent) below.set(parent, [...(below.get(parent) ?? []), place]);
  }
  const nodeOf = (place: BoardInPlace): BoardNode => {
    const before = built.get(place);
    if (before) return before;
    const parent = lazy(() => {
      const above = parentOf(place);
      return above && nodeOf(above);
    });
    const children = lazy(() => (below.get(place) ?? []).map(nodeOf));
    const node: BoardNode = {
      ...place,
      get parent() {
        return parent();
      },
      get children() {
        return children();
      },
      feeder: feederOf(place.context, parentOf(place)),
      threePhase: isThreePhase(place.context),
      get studies() {
        return studiesOn(place);
      },
    };
    built.set(place, node);
    return node;
  };
  const nodes = sound.map(nodeOf);
  const byBoard = new Map(nodes.map((node) => [node.board, node] as const));
  return {
    nodes,
    origins: nodes.filter(({ board }) => board.head.facts.one("fed-from")?.args.from.value === "supply"),
    nodeOf: (board) => byBoard.get(board),
  };
});

function inCircle(place: BoardInPlace, parentOf: (place: BoardInPlace) => BoardInPlace | undefined): boolean {
  const seen = new Set([place]);
  for (let at = parentOf(place); at; at = parentOf(at)) {
    if (seen.has(at)) return true;
    seen.add(at);
  }
  return false;
}

function feederOf({ upstream }: Context, parent: BoardInPlace | undefined): WayStudy | undefined {
  const way = upstream[0]?.feeder;
  return way && parent && studyWay(way, parent.context);
}

export function isThreePhase(context: Context): boolean {
  const own = context.board.facts.one("phases")?.args.count.value;
  return own === undefined ? studySupply(context).threePhase : own === "three";
}

/** Works an answer out once for a board in its place, as long as neither changes. */
export function keptInPlace<T>(compute: (place: BoardInPlace) => T): (place: BoardInPlace) => T {
  const kept = new WeakMap<Board, { readonly context: Context; readonly value: T }>();
  return (place) => {
    const before = kept.get(place.board);
    if (before?.context === place.context) return before.value;
    const value = compute(place);
    kept.set(place.board, { context: place.context, value });
    return value;
  };
}

/** The studies of a board's ways. */
export const studiesOn = keptInPlace(({ board, context }): readonly WayStudy[] =>
  board.ways.map((way) => studyWay(way, context)),
);
