import { memoByObject } from "../circuit/kept.ts";
import type { FactOf, Facts } from "../model/values.ts";

type Query = FactOf<"way", "query">;
type Answer = FactOf<"way", "answer">;

interface Queries {
  readonly open: readonly Query[];
  readonly stray: readonly Answer[];
}

const none: Queries = { open: [], stray: [] };

/** Questions of a block that no answer stands below, and answers that no question stands above. */
export const queriesIn = (facts: Facts): Queries =>
  // Hardly a block has any, so nothing is kept of most.
  facts.list.some(({ word }) => word === "query" || word === "answer") ? queriesOf(facts) : none;

const queriesOf = memoByObject((facts: Facts): Queries => {
  const open: Query[] = [];
  const stray: Answer[] = [];
  const asked: Query[] = [];
  const answered = new Set<Query>();
  for (const fact of facts.list) {
    if (fact.word === "query") asked.push(fact as Query);
    else if (fact.word === "answer") {
      // An answer may take more than one line; each belongs to the last question.
      const last = asked.at(-1);
      if (last) answered.add(last);
      else stray.push(fact as Answer);
    }
  }
  open.push(...asked.filter((query) => !answered.has(query)));
  return { open, stray };
});
