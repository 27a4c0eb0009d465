import { gradeOfMissing } from "../../circuit/describe.ts";
import { liveTestsDue } from "../../circuit/supply.ts";
import type { Context } from "../../model/installation.ts";
import { isThreePhase } from "../../model/three-lines.ts";
import { liveOfBoard } from "../../readings/rcd-tests.ts";
import { boardRule, wordSpot } from "../frame/rule.ts";

/** Of a board further down that says nothing of its lines, nor its feeder, it is not known that it has three. */
function hasThree(context: Context): boolean {
  const { board, upstream } = context;
  const said = board.facts.has("phases") || board.facts.has("phase") || upstream[0]?.feeder?.facts.has("phase");
  return (said || upstream.length === 0) && isThreePhase(context);
}

export default boardRule({
  id: "live/phase-sequence-missing",
  severity: "error",
  since: "0.1",
  title: "The phase sequence of a three-phase board is not recorded.",
  why: "With two lines interchanged motors run backwards: pumps do not pump, saws throw the work at the user. Check it at every three-phase board.",
  clauses: ["643.9"],
  examples: [
    {
      bad: `wayfile 1
installation "Saw mill" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  board A "Mill board" {
  ^^^^^
    fed-from     supply
    phases       three
  }
}`,
      good: `wayfile 1
installation "Saw mill" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  board A "Mill board" {
    fed-from     supply
    phases       three
    phase-sequence ok
  }
}`,
    },
  ],
  check({ board, context }, report) {
    if (!liveTestsDue(context) || !hasThree(context)) return;
    const atOrigin = context.upstream.length === 0 && context.supply?.has("phase-sequence");
    const stated = board.head.facts.has("phase-sequence") || atOrigin;
    if (stated || liveOfBoard(context).some(({ facts }) => facts.has("phase-sequence"))) return;
    report(wordSpot(board.head.header), {
      ...gradeOfMissing(context),
      message: `The phase sequence of three-phase board ${board.head.name} is not recorded: check it before a motor runs.`,
    });
  },
});
