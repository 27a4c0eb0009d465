import { blocksOf } from "../../analysis/blocks.ts";
import { queriesIn } from "../../analysis/queries.ts";
import { factSpot, installationRule } from "../rule.ts";

export default installationRule({
  id: "record/open-query",
  severity: "information",
  since: "0.1",
  title: "A question without an answer.",
  why: "A reviewer asked this of the record. It stays open until an answer stands below it.",
  clauses: [],
  examples: [
    {
      bad: `way 1 radial "Oven" {
  query "Why a type C device here?"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Oven" {
  query  "Why a type C device here?"
  answer "Its transformer takes a high inrush"
}`,
    },
  ],
  check(installation, report) {
    const open = blocksOf(installation).flatMap(({ facts }) => queriesIn(facts).open);
    open.forEach((fact, index) => {
      const count = open.length > 1 ? ` (${index + 1} of ${open.length} open)` : "";
      report(factSpot(fact), { message: `Not answered yet: ${fact.args.text.value}${count}` });
    });
  },
});
