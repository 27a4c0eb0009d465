import type { BoardHead, InstallationHead, Way } from "../model/file.ts";
import type { Installation } from "../model/installation.ts";
import type { Fact, Facts } from "../model/values.ts";
import { keptWith } from "./kept.ts";

/** Every block of an installation with the line that opens it: itself, its supply, boards, ways and tests. */
export interface Block {
  readonly header: Fact;
  readonly facts: Facts;
}

/** The blocks of an installation's own lines, of a board's, or of a way. */
export const blocksIn = keptWith((part: InstallationHead | BoardHead | Way): readonly Block[] => {
  const blocks: Block[] = [];
  const visit = (header: Fact, facts: Facts): void => {
    blocks.push({ header, facts });
    for (const fact of facts.list) if (fact.inner) visit(fact, fact.inner);
  };
  visit(part.header, part.facts);
  return blocks;
});

/** An installation's own lines, each board's, and each way: what an edit replaces one at a time. */
export function partsOf({ head, boards }: Installation): (InstallationHead | BoardHead | Way)[] {
  const parts: (InstallationHead | BoardHead | Way)[] = [head];
  for (const { board } of boards) {
    parts.push(board.head);
    for (const way of board.ways) parts.push(way);
  }
  return parts;
}

export const blocksOf = (installation: Installation): Block[] =>
  partsOf(installation).flatMap((part) => blocksIn(part));
