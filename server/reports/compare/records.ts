/** What happened to recorded readings between two versions of one file, by itself. */
import type { Board, FileModel, Way } from "../../model/file.ts";
import { printAddress } from "../../readings/address.ts";
import { entriesBesideBoards, entriesOfBoard, entriesOfWay } from "../../readings/entries.ts";
import type { Renamed } from "../../readings/entry-text.ts";
import { changesOf, type EntryChange } from "./changes.ts";
import { matchBoards, matchWays } from "./match.ts";

export interface FileChanges {
  readonly changes: readonly EntryChange[];
  /** Boards and ways under another name: the later one and the earlier. */
  readonly moved: ReadonlyMap<string, string>;
}

/** Every change between two versions of a file. Circuits are followed to their present numbers. */
export function changesInFile(before: FileModel, after: FileModel): FileChanges {
  const boards = matchBoards(boardsIn(before), boardsIn(after));
  const renamed: Renamed = new Map(
    boards.flatMap(({ old, now }) => (old && now ? [[old.head.name, now.head.name] as const] : [])),
  );
  const ways = matchWays(boards, renamed);
  const changes = [
    ...changesOf(entriesBesideBoards(before), entriesBesideBoards(after)),
    ...boards.flatMap(({ old, now }) =>
      changesOf(old ? entriesOfBoard(old.head, renamed) : [], now ? entriesOfBoard(now.head) : []),
    ),
    ...ways.flatMap(({ old, now }) => {
      if (old && now && old.way.segment.text === now.way.segment.text) return [];
      return changesOf(
        old ? entriesOfWay(old.board.head.name, old.way, renamed) : [],
        now ? entriesOfWay(now.board.head.name, now.way) : [],
      );
    }),
  ];
  const pairs = [
    ...boards.map(({ old, now }) => [now && printed(now), old && printed(old)] as const),
    ...ways.map(({ old, now }) => [now && printed(now.board, now.way), old && printed(old.board, old.way)] as const),
  ];
  const moved = new Map(pairs.flatMap(([now, old]) => (now && old && now !== old ? [[now, old] as const] : [])));
  return { changes, moved };
}

const printed = ({ head: { name } }: Board, way?: Way): string =>
  printAddress({ place: way ? { of: "way", board: name, way: way.id } : { of: "board", board: name }, blocks: [] });

/** The name that the place of an address had before, in the address. */
export function addressBefore(at: string, moved: ReadonlyMap<string, string>): string {
  const end = at.indexOf(" · ");
  const place = end < 0 ? at : at.slice(0, end);
  const former = moved.get(place);
  return former === undefined ? at : former + (end < 0 ? "" : at.slice(end));
}

export const boardsIn = ({ installations, boards }: Pick<FileModel, "installations" | "boards">): Board[] => [
  ...installations.flatMap((part) => part.boards),
  ...boards,
];
