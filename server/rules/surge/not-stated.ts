import { liveTestsDue, workOf } from "../../circuit/supply.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "surge/not-stated",
  severity: "warning",
  since: "0.1",
  title: "Surge protection is not stated.",
  why: "The designer states whether it is fitted or was found unnecessary, so that the next person need not guess.",
  clauses: ["443.4", "443.4.1", "534"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  work         new
  supply {
  ^^^^^^
    earthing     TN-S
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  work         new
  supply {
    earthing     TN-S
    spd          not-fitted "Owner declined in writing, equipment of low worth"
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
  ],
  check({ head, supply, boards, edition }, report) {
    const [first] = boards;
    const fact = head.facts.one("supply");
    if (!first || !supply || !fact || !edition || edition.spd !== "consequence") return;
    if (
      !liveTestsDue({ installation: first.context.installation }) ||
      workOf({ installation: first.context.installation }) !== "new"
    )
      return;
    if (supply.has("spd") || boards.some(({ board }) => board.head.facts.has("spd"))) return;
    report(wordSpot(fact), {
      message: "Surge protection is not stated: write spd fitted, or spd not-fitted with the reason.",
      source: edition.sources.spd,
    });
  },
});
