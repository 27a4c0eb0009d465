import { stages } from "../../../grammar/choices.ts";
import { hasBlock } from "../../circuit/blocks.ts";
import { lineInBlock } from "../common/writing.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/no-stage",
  severity: "warning",
  since: "0.1",
  title: "The stage of the work is not stated.",
  why: "The stage decides what may still be missing. Without it the schedule is treated as a design, and no missing test is reported.",
  clauses: ["644.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
^^^^^^^^^^^^
  standard     BS 7671:2018+A2:2022
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        design
}`,
    },
  ],
  check(installation, report) {
    const { head } = installation;
    if (head.facts.has("stage")) return;
    const tested = hasBlock(installation, "dead") || hasBlock(installation, "live");
    report(wordSpot(head.header), {
      message: `The stage is not stated, so this is treated as a design${tested ? ", and missing tests are not reported" : ""}: write stage.`,
      fixes: Object.keys(stages).flatMap((stage) => lineInBlock(head.header, `stage ${stage}`)),
    });
  },
});
