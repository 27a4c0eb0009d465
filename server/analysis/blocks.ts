import type { Installation } from "../model/installation.ts";
import type { Fact, Facts } from "../model/values.ts";

/** Every block of an installation with the line that opens it: itself, its supply, boards, ways and tests. */
export interface Block {
  readonly header: Fact;
  readonly facts: Facts;
}

export function blocksOf(installation: Installation): Block[] {
  const blocks: Block[] = [];
  const visit = (header: Fact, facts: Facts): void => {
    blocks.push({ header, facts });
    for (const fact of facts.list) if (fact.inner) visit(fact, fact.inner);
  };
  visit(installation.head.header, installation.head.facts);
  for (const { board } of installation.boards) {
    visit(board.head.header, board.head.facts);
    for (const way of board.ways) visit(way.header, way.facts);
  }
  return blocks;
}
