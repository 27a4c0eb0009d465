/** The boards of an installation as the tree they are fed by. */

import { memoOfWhole } from "../circuit/kept.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import { Memo } from "../memo/memo.ts";
import { type Board, sameItems } from "../model/file.ts";
import type { BoardInPlace, Context, Installation } from "../model/installation.ts";
import { isThreePhase } from "../model/three-lines.ts";

/** A board with its ways, in the order of the file. */
export interface StudiedBoard extends BoardInPlace {
  readonly studies: readonly WayStudy[];
}

/** A board with what feeds it and what it feeds. */
export interface BoardNode extends StudiedBoard {
  readonly parent: BoardNode | undefined;
  /** The way of the parent that feeds it, if the schedule says which. */
  readonly feeder: WayStudy | undefined;
  readonly children: readonly BoardNode[];
  readonly threePhase: boolean;
}

export interface Network {
  readonly nodes: readonly BoardNode[];
  /** The boards fed from the supply. */
  readonly origins: readonly BoardNode[];
  nodeOf(board: Board): BoardNode | undefined;
}

/** The network of an installation; the same one for as long as the installation stays the same. */
export const networkOf = memoOfWhole((installation: Installation): Network => {
  const { boards } = installation;
  const byHead = new Map(boards.map((place) => [place.board.head, place] as const));
  const parentOf = ({ context }: BoardInPlace): BoardInPlace | undefined => {
    const above = context.upstream[0]?.board;
    return above && byHead.get(above);
  };
  // Boards that feed each other in a circle have no origin: nothing is summed along them.
  const sound = boards.filter((place) => !inCircle(place, parentOf));
  const below = new Map<BoardInPlace, BoardInPlace[]>();
  for (const place of sound) {
    const parent = parentOf(place);
    if (parent) below.set(parent, [...(below.get(parent) ?? []), place]);
  }
  const built = new Map<BoardInPlace, BoardNode>();
  for (const place of sound) {
    if (!parentOf(place)) for (const [at, node] of treeOf(place, below)) built.set(at, node);
  }
  const nodes = sound.flatMap((place) => built.get(place) ?? []);
  const byBoard = new Map(nodes.map((node) => [node.board, node] as const));
  return {
    nodes,
    origins: nodes.filter(({ board }) => board.head.facts.one("fed-from")?.args.from.value === "supply"),
    nodeOf: (board) => byBoard.get(board),
  };
});

type Below = ReadonlyMap<BoardInPlace, readonly BoardInPlace[]>;
type Tree = readonly (readonly [BoardInPlace, BoardNode])[];

const trees = new Memo<Context, Tree>();

/** A board without a parent and all behind it: the same nodes, with all that is kept with them, while none of them changes. */
function treeOf(root: BoardInPlace, below: Below): Tree {
  const places = withAllBelow(root, below);
  const before = trees.get(root.context);
  const same =
    before?.length === places.length &&
    places.every(({ board, context }, index) => {
      const node = before[index]?.[1];
      return node?.board === board && node.context === context;
    });
  if (same) return places.map((place, index) => [place, (before[index] as Tree[number])[1]] as const);
  const built = new Map<BoardInPlace, BoardNode>();
  build(root, undefined, below, built);
  const tree = [...built];
  trees.set(root.context, tree);
  return tree;
}

const withAllBelow = (place: BoardInPlace, below: Below): BoardInPlace[] => [
  place,
  ...(below.get(place) ?? []).flatMap((child) => withAllBelow(child, below)),
];

function build(
  place: BoardInPlace,
  parent: BoardNode | undefined,
  below: Below,
  built: Map<BoardInPlace, BoardNode>,
): BoardNode {
  const { board, context } = place;
  const children: BoardNode[] = [];
  const node: BoardNode = {
    board,
    context,
    parent,
    children,
    get feeder() {
      return feederOf(context, parent);
    },
    threePhase: isThreePhase(context),
    get studies() {
      return studiesOn(place);
    },
  };
  built.set(place, node);
  for (const child of below.get(place) ?? []) children.push(build(child, node, below, built));
  return node;
}

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

/** A board with all that stands behind it: the same object for as long as none of it is another. */
interface Branch {
  readonly board: Board;
  readonly threePhase: boolean;
  readonly children: readonly Branch[];
}

const branches = new Memo<Context, Branch>();

const branchOf = memoOfWhole(({ board, context, threePhase, children }: BoardNode): Branch => {
  const own = children.map(branchOf);
  const before = branches.get(context);
  if (before?.board === board && sameItems(before.children, own)) return before;
  const fresh = { board, threePhase, children: own };
  branches.set(context, fresh);
  return fresh;
});

/** What stands before a board, as it matters to those behind it. */
interface Above {
  readonly own: Branch | Board;
  readonly threePhase: boolean;
  readonly above: Above | undefined;
}

const aboves = new Memo<Context, Above>();

/**
 * A feeder carries what all boards behind it draw, so that a board that has one counts with all of them; one at the origin
 * has none, and counts by itself.
 */
const aboveOf = memoOfWhole((node: BoardNode): Above => {
  const { board, context, parent, threePhase } = node;
  const own = parent ? branchOf(node) : board;
  const above = parent && aboveOf(parent);
  const before = aboves.get(context);
  if (before?.own === own && before.above === above) return before;
  const fresh = { own, threePhase, above };
  aboves.set(context, fresh);
  return fresh;
});

/**
 * What stands before and behind a board in its network: what is worked out of it stays right while this is the same, and
 * what both share with other boards gives the same answers. What other boards draw from one at the origin may not be asked
 * from behind it.
 */
export interface Neighbours {
  readonly branch: Branch;
  readonly above: Above | undefined;
}

export const neighboursOf = (node: BoardNode): Neighbours => ({
  branch: branchOf(node),
  above: node.parent && aboveOf(node.parent),
});

/** An edit of what all boards share makes another of each, with the same boards in them. */
export const sameNeighbours = (one: Neighbours, other: Neighbours): boolean =>
  sameBranch(one.branch, other.branch) && sameAbove(one.above, other.above);

const sameBranch = (one: Branch, other: Branch): boolean =>
  one === other ||
  (one.board === other.board &&
    one.threePhase === other.threePhase &&
    one.children.length === other.children.length &&
    one.children.every((child, index) => sameBranch(child, other.children[index] as Branch)));

function sameAbove(one: Above | undefined, other: Above | undefined): boolean {
  if (one === other || !one || !other) return one === other;
  const same = "board" in one.own && "board" in other.own ? sameBranch(one.own, other.own) : one.own === other.own;
  return same && one.threePhase === other.threePhase && sameAbove(one.above, other.above);
}

/** All boards among them. */
export function boardsAmong({ branch, above }: Neighbours): readonly Board[] {
  const boards = withBoardsBehind(branch);
  for (let at = above; at; at = at.above) boards.push(...("board" in at.own ? withBoardsBehind(at.own) : [at.own]));
  return boards;
}

const withBoardsBehind = ({ board, children }: Branch): Board[] => [board, ...children.flatMap(withBoardsBehind)];

/** The studies of a board's ways. */
export const studiesOn = ({ board, context }: BoardInPlace): readonly WayStudy[] =>
  board.ways.map((way) => studyWay(way, context));
