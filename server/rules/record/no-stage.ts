import { stages } from "../../../grammar/choices.ts";
import { hasBlock } from "../../circuit/blocks.ts";
import { lineInBlock } from "../common/writing.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/no-stage",
  severity: "warning",
  since: "0.1",
  title: "How far the work is, is not said.",
  why: "The stage decides what may still be missing. Without it the schedule is taken for a design, and no test is missed.",
  clauses: ["644.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
^^^^^^^^^^^^
  standard  BS 7671:2018+A2:2022
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     design
}`,
    },
  ],
  check(installation, report) {
    const { head } = installation;
    if (head.facts.has("stage")) return;
    const tested = hasBlock(installation, "dead") || hasBlock(installation, "live");
    report(wordSpot(head.header), {
      message: `How far is the work? Without a stage this is taken for a design${tested ? ", and what is missing among its tests is not noticed" : ""}.`,
      fixes: Object.keys(stages).flatMap((stage) => lineInBlock(head.header, `stage ${stage}`)),
    });
  },
});
