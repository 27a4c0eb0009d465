import { editions } from "../../tables/editions.ts";
import { lineInBlock } from "../common/writing.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/no-standard",
  severity: "error",
  since: "0.1",
  title: "The edition of the wiring regulations is not stated.",
  why: "Limits differ between editions, so without one nothing is judged, and no finding does not mean that all is well. State the edition the work was done to.",
  clauses: ["644.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
^^^^^^^^^^^^
  stage        design
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        design
}`,
    },
  ],
  check({ head }, report) {
    if (head.facts.has("standard")) return;
    report(wordSpot(head.header), {
      message: "No edition of BS 7671 is stated, so nothing is judged: write the one the work was done to.",
      fixes: [...editions]
        .reverse()
        .flatMap(({ id, name }) => lineInBlock(head.header, `standard ${id}`, `Judge by ${id} (${name})`)),
    });
  },
});
