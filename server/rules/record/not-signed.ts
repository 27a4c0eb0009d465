import { signatoryOf } from "../../circuit/signatories.ts";
import { isOutsideWork, stageOf, workOf } from "../../circuit/supply.ts";
import { latestInspection } from "../../model/inspections.ts";
import { listed } from "../../text/words.ts";
import { boardRule, wordSpot } from "../frame/rule.ts";

export default boardRule({
  id: "record/not-signed",
  severity: "information",
  since: "0.1",
  title: "Designer, installer or tester is not named.",
  why: "One person each is responsible for design, installation and testing. Write them once for the installation, or at the board or way where they differ.",
  clauses: ["644.1"],
  examples: [
    {
      setting: { stage: "tested", board: "fed-from supply" },
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  designed     by "K.A."
  installed    by "D.O."
  board A "Front board" {
  ^^^^^
    fed-from     supply
    way 1 radial "Oven"
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  designed     by "K.A."
  installed    by "D.O."
  tested       by "K.A."
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven"
  }
}`,
    },
  ],
  check({ board, context, studies }, report) {
    if (stageOf(context) !== "tested") return;
    const used = studies.filter((study) => !study.isSpare && !isOutsideWork(study));
    const existing = workOf({ installation: context.installation }) === "existing";
    const missing = (["designed", "installed", "tested"] as const)
      .filter((word) => !existing || word === "tested")
      .filter((word) => !context.installation.facts.isUnread(word) && !board.head.facts.isUnread(word))
      .filter((word) => used.some(({ facts }) => !facts.isUnread(word) && !signatoryOf(word, facts, context)))
      .filter((word) => !latestInspection(context.installation)?.facts.has(word));
    if (missing.length === 0) return;
    report(wordSpot(board.head.header), {
      message: `Board ${board.head.name} does not state who ${listed(missing)} its circuits: write ${listed(missing.map((word) => `“${word} by”`))} and a name.`,
    });
  },
});
