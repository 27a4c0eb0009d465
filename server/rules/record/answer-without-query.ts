import { type Block, boardBlocks, ownBlocks } from "../../circuit/blocks.ts";
import { queriesIn } from "../../readings/queries.ts";
import { factSpot, installationRule, type Reporter } from "../frame/rule.ts";

function strays(blocks: readonly Pick<Block, "facts">[], report: Reporter): void {
  for (const fact of blocks.flatMap(({ facts }) => queriesIn(facts).stray)) {
    report(factSpot(fact), { message: "There is no question above this answer: put it below the one it belongs to." });
  }
}

export default installationRule({
  id: "record/answer-without-query",
  severity: "warning",
  since: "0.1",
  title: "An answer without a question.",
  why: "An answer belongs below its question in the same block. Alone, nobody knows what it answers, and the question it was meant for stays open.",
  clauses: [],
  examples: [
    {
      bad: `way 1 radial "Oven" {
  answer       "Its transformer takes a high inrush"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Oven" {
  query        "Why a type C device here?"
  answer       "Its transformer takes a high inrush"
}`,
    },
  ],
  check(installation, report) {
    strays([...installation.files, ...ownBlocks(installation)], report);
  },
  checkBoard({ board }, report) {
    strays(boardBlocks(board), report);
  },
});
