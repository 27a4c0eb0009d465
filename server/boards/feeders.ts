import { memoOfBoards, memoOfWhole } from "../circuit/kept.ts";
import type { Board, Way } from "../model/file.ts";
import type { Installation } from "../model/installation.ts";
import type { FactOf } from "../model/values.ts";

/** A way that says which board it feeds. */
export interface Feeder {
  readonly board: Board;
  readonly way: Way;
  readonly fact: FactOf<"way", "feeds">;
  readonly to: string;
}

/** Every `feeds` of an installation, in the order of its files. */
export const feedersIn = (installation: Installation): readonly Feeder[] => onBoards(installation).flat();

const onBoards = memoOfBoards((board): readonly Feeder[] =>
  board.ways.flatMap((way) => {
    const fact = way.facts.one("feeds");
    return fact ? [{ board, way, fact, to: fact.args.board.value }] : [];
  }),
);

/** The boards of an installation by name; the first of a name, as a reference would find it. */
export const boardsByName = memoOfWhole((installation: Installation): ReadonlyMap<string, Board> => {
  const map = new Map<string, Board>();
  for (const { board } of installation.boards) if (!map.has(board.head.name)) map.set(board.head.name, board);
  return map;
});
