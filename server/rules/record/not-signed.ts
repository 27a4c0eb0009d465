import { signatoryOf } from "../../circuit/signatories.ts";
import { liveTestsDue, workOf } from "../../circuit/supply.ts";
import { boardRule, wordSpot } from "../frame/rule.ts";

export default boardRule({
  id: "record/not-signed",
  severity: "information",
  since: "0.1",
  title: "It is not said who answers for the work.",
  why: "Design, installation and testing are each answered for by a person. Write them once for the installation, or where they differ for a board or way.",
  clauses: ["632.3", "644.1"],
  examples: [
    {
      setting: { stage: "tested", board: "fed-from supply" },
      bad: `wayfile 1
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  designed  by "K.A."
  installed by "D.O."
  board A "Front board" {
  ^^^^^
    fed-from  supply
    way 1 radial "Oven"
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  designed  by "K.A."
  installed by "D.O."
  tested    by "K.A."
  board A "Front board" {
    fed-from  supply
    way 1 radial "Oven"
  }
}`,
    },
  ],
  check({ board, context, studies }, report) {
    if (!liveTestsDue(context)) return;
    const used = studies.filter((study) => !study.isSpare);
    const existing = workOf(context) === "existing";
    const missing = (["designed", "installed", "tested"] as const)
      .filter((hand) => !existing || hand === "tested")
      .filter((hand) => used.some(({ facts }) => !facts.broken.includes(hand) && !signatoryOf(hand, facts, context)));
    if (missing.length === 0) return;
    report(wordSpot(board.head.header), {
      message: `Who ${missing.join(", ")} the circuits of board ${board.head.name}? Write ${missing.map((hand) => `“${hand} by”`).join(", ")} with a name or initials.`,
    });
  },
});
