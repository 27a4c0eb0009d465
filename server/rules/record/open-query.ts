import { type Block, boardBlocks, ownBlocks } from "../../circuit/blocks.ts";
import { queriesIn } from "../../readings/queries.ts";
import { factSpot, installationRule, type Reporter } from "../frame/rule.ts";

function open(blocks: readonly Pick<Block, "facts">[], report: Reporter): void {
  for (const fact of blocks.flatMap(({ facts }) => queriesIn(facts).open)) {
    report(factSpot(fact), { message: `Not answered: ${fact.args.text.value.trim() || "a question without words."}` });
  }
}

export default installationRule({
  id: "record/open-query",
  severity: "information",
  since: "0.1",
  title: "A question is not answered.",
  why: "A reviewer asked this. It stays open until an answer is written below it.",
  clauses: [],
  examples: [
    {
      bad: `way 1 radial "Oven" {
  query        "Why a type C device here?"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Oven" {
  query        "Why a type C device here?"
  answer       "Its transformer takes a high inrush"
}`,
    },
  ],
  check(installation, report) {
    open([...installation.files, ...ownBlocks(installation)], report);
  },
  checkBoard({ board }, report) {
    open(boardBlocks(board), report);
  },
});
