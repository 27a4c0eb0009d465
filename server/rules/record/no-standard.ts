import { editions } from "../../tables/editions.ts";
import { lineInBlock } from "../common/writing.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/no-standard",
  severity: "error",
  since: "0.1",
  title: "The edition of the wiring regulations is not named.",
  why: "Limits differ between editions, so with none nothing is judged: silence about this installation means nothing. Name the edition the work was done to.",
  clauses: ["644.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
^^^^^^^^^^^^
  stage  design
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     design
}`,
    },
  ],
  check({ head }, report) {
    if (head.facts.has("standard")) return;
    report(wordSpot(head.header), {
      message: "No edition of BS 7671 is named here, so nothing is judged. Write the one the work was done to.",
      fixes: [...editions]
        .reverse()
        .flatMap(({ id, name }) => lineInBlock(head.header, `standard ${id}`, `Judge by ${id} (${name})`)),
    });
  },
});
