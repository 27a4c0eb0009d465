import { mostBends } from "../../calc/containment.ts";
import { plain } from "../../calc/result.ts";
import { containmentRule, inIt } from "../common/containments.ts";
import { amount, factSpot } from "../frame/rule.ts";

export default containmentRule({
  id: "containment/too-many-bends",
  severity: "warning",
  since: "0.1",
  title: "A conduit has too many bends between draw-in points.",
  why: "Every bend multiplies the pull, and the insulation takes it. A draw-in box between the bends lets the cables be pulled in a section at a time.",
  clauses: ["522.8"],
  examples: [
    {
      bad: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment C1 conduit 25 mm length 5 m bends 3
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment C1 conduit 25 mm {
      section      3 m bends 2
      section      2 m bends 1
    }
  }
}`,
    },
  ],
  judge(study, report) {
    const most = mostBends();
    if (!study.isConduit) return;
    for (const { fact, bends } of study.sections) {
      if (bends === undefined || bends <= most.value) continue;
      report(factSpot(fact), {
        message: `${study.name} has ${plain(bends)} bends between draw-in points, more than ${plain(most.value)}: fit a draw-in box between them.`,
        value: amount(bends, "bends"),
        limit: amount(most.value, "bends"),
        source: most.source,
        related: inIt(study),
      });
    }
  },
});
