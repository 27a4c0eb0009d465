/** Which board feeds which: a board is called by what feeds it. */
import { networkOf } from "../boards/network.ts";
import type { Board } from "../model/file.ts";
import { factSpot, type Spot } from "../rules/frame/rule.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { boardAt, type Cursor } from "./cursor.ts";
import { boardsIn, nameAt } from "./names.ts";

export interface BoardItem {
  readonly name: string;
  readonly title: string;
  readonly header: Spot;
}

/** One board that feeds another, and the line that says so. */
interface Feed {
  readonly board: BoardItem;
  readonly by: Spot;
}

const itemOf = ({ head }: Board): BoardItem => ({ name: head.name, title: head.title, header: factSpot(head.header) });

/** The board a name at the cursor means, else the one the cursor is in. */
export function boardItemAt(snapshot: Snapshot, cursor: Cursor): BoardItem | undefined {
  const named = nameAt(snapshot, cursor);
  const meant =
    named?.names === "board" ? boardsIn(snapshot).find(({ head }) => head.name === named.name.value) : undefined;
  const board = meant ?? boardAt(snapshot, cursor.segment)?.board;
  return board && itemOf(board);
}

function nodeNamed(snapshot: Snapshot, name: string) {
  for (const installation of snapshot.installations) {
    const place = installation.boards.find(({ board }) => board.head.name === name);
    if (place) return networkOf(installation).nodeOf(place.board);
  }
  return undefined;
}

/** The board that feeds one. */
export function fedBy(snapshot: Snapshot, name: string): Feed[] {
  const node = nodeNamed(snapshot, name);
  const { parent, feeder } = node ?? {};
  if (!node || !parent) return [];
  const by = feeder ? factSpot(feeder.way.header) : feedSpot(node.board);
  return [{ board: itemOf(parent.board), by }];
}

/** The boards that one feeds. */
export function feeding(snapshot: Snapshot, name: string): Feed[] {
  const node = nodeNamed(snapshot, name);
  return (node?.children ?? []).map(({ board, feeder }) => ({
    board: itemOf(board),
    by: feeder ? factSpot(feeder.way.header) : feedSpot(board),
  }));
}

function feedSpot({ head }: Board): Spot {
  const fact = head.facts.one("fed-from");
  return factSpot(fact ?? head.header);
}
