import type { Board } from "../model/file.ts";
import type { Installation } from "../model/installation.ts";
import type { Fact, Facts } from "../model/values.ts";
import { memoByObject } from "./kept.ts";

/** A block with the line that opens it: an installation, its supply, a board, a way, a day of tests. */
export interface Block {
  readonly header: Fact;
  readonly facts: Facts;
}

/** A block and those inside it. */
export function blocksWithin(header: Fact, facts: Facts): Block[] {
  return [{ header, facts }, ...facts.list.flatMap((fact) => (fact.inner ? blocksWithin(fact, fact.inner) : []))];
}

/** The blocks of an installation's own lines, its supply among them. */
export const ownBlocks = ({ head }: Pick<Installation, "head">): Block[] => blocksWithin(head.header, head.facts);

/** The blocks of a board and its ways. */
export const boardBlocks = memoByObject(({ head, ways }: Board): readonly Block[] => [
  ...blocksWithin(head.header, head.facts),
  ...ways.flatMap((way) => blocksWithin(way.header, way.facts)),
]);

const kindsOn = memoByObject((board: Board) => new Set<string>(boardBlocks(board).map(({ facts }) => facts.kind)));

/** Whether any block of the kind stands in the installation's boards. */
export const hasBlock = (installation: Installation, kind: Facts["kind"]): boolean =>
  installation.boards.some(({ board }) => kindsOn(board).has(kind));
