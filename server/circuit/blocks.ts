import type { Board } from "../model/file.ts";
import type { Installation } from "../model/installation.ts";
import type { Fact, Facts } from "../model/values.ts";
import { memoByObject, memoOfBoards } from "./kept.ts";

/** A block with the line that opens it: an installation, its supply, a board, a way, a day of tests. */
export interface Block {
  readonly header: Fact;
  readonly facts: Facts;
}

/** A block and those inside it. */
export function blocksWithin(header: Fact, facts: Facts): Block[] {
  const found: Block[] = [];
  collect(header, facts, found);
  return found;
}

function collect(header: Fact, facts: Facts, found: Block[]): void {
  found.push({ header, facts });
  for (const fact of facts.list) if (fact.inner) collect(fact, fact.inner, found);
}

/** The blocks of an installation's own lines, its supply among them. */
export const ownBlocks = ({ head }: Pick<Installation, "head">): Block[] => blocksWithin(head.header, head.facts);

/** The blocks of a board and its ways. */
export const boardBlocks = memoByObject(({ head, ways }: Board): readonly Block[] => {
  const found = blocksWithin(head.header, head.facts);
  for (const way of ways) collect(way.header, way.facts, found);
  return found;
});

const kindsOnBoards = memoOfBoards((board) => new Set<string>(boardBlocks(board).map(({ facts }) => facts.kind)));

/** Whether any block of the kind stands in the installation's boards. */
export const hasBlock = (installation: Installation, kind: Facts["kind"]): boolean =>
  kindsOnBoards(installation).some((kinds) => kinds.has(kind));
