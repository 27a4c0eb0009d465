import { memoOfBoards } from "../../circuit/kept.ts";
import { workOf } from "../../circuit/supply.ts";
import { factSpot, installationRule } from "../frame/rule.ts";

const onBoards = memoOfBoards((board) => board.head.facts.one("spd"));

const sample = (spd: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  work         new
  supply {
    earthing     TN-S
    spd          ${spd}
  }
  board A "Board" {
    fed-from     supply
  }
}`;

export default installationRule({
  id: "surge/omitted-without-reason",
  severity: "warning",
  since: "0.1",
  title: "Surge protection is omitted without a reason.",
  why: "Whether it may be omitted depends on the consequences of a surge, or in earlier editions on a risk assessment. The reason belongs in the record, so that the next person need not repeat the work.",
  clauses: ["443.4", "443.4.1", "443.5"],
  examples: [
    {
      bad: sample("not-fitted").replace("not-fitted\n", "not-fitted\n    ^^^^^^^^^^^^^^^^^^^^^^^\n"),
      good: sample('not-fitted "Owner declined in writing, equipment of low worth"'),
    },
  ],
  check(installation, report) {
    const { supply, boards, edition } = installation;
    const [first] = boards;
    if (
      !first ||
      !edition ||
      edition.spd === "none" ||
      workOf({ installation: first.context.installation }) === "existing"
    )
      return;
    const all = [supply?.one("spd"), ...onBoards(installation)].flatMap((fact) => (fact ? [fact] : []));
    // One device, or one reason, speaks for the whole installation.
    const [unsaid] = all;
    if (!unsaid || all.some(({ args }) => args.fitted.value === "fitted" || (args.why?.value.trim() ?? "") !== ""))
      return;
    const reason =
      edition.spd === "consequence"
        ? "the consequences of a surge, and who decided"
        : "the result of the risk assessment";
    report(factSpot(unsaid), {
      message: `Surge protection is omitted without a reason: record ${reason}.`,
      source: edition.sources.spd,
    });
  },
});
