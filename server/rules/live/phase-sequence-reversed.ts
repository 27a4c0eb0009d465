import { wordAt } from "../../model/fact-values.ts";
import type { Fact } from "../../model/values.ts";
import { liveOfBoard } from "../../readings/rcd-tests.ts";
import { factSpot, installationRule, type Reporter } from "../frame/rule.ts";

function checkFact(fact: Fact | undefined, report: Reporter): void {
  if (!fact || wordAt(fact, "verdict") !== "reversed") return;
  report(factSpot(fact), {
    message: "The phase sequence is reversed: motors run backwards. Isolate, and interchange two lines.",
  });
}

export default installationRule({
  id: "live/phase-sequence-reversed",
  severity: "error",
  since: "0.1",
  title: "The phase sequence is reversed.",
  why: "Motors connected here run backwards. Isolate, interchange two of the lines where the sequence is lost, and check every board downstream again.",
  opens: true,
  clauses: ["643.9"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `live 2026-03-05 {
  phase-sequence reversed
  ^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `live 2026-03-05 {
  phase-sequence ok
}`,
    },
  ],
  check(installation, report) {
    checkFact(installation.supply?.one("phase-sequence"), report);
  },
  // The latest word counts: a reversal that was put right stays in the record.
  checkBoard({ board, context, studies }, report) {
    const onBoard = liveOfBoard(context)
      .find(({ facts }) => facts.has("phase-sequence"))
      ?.facts.one("phase-sequence");
    checkFact(onBoard ?? board.head.facts.one("phase-sequence"), report);
    for (const { liveTests } of studies) {
      checkFact(liveTests.find(({ facts }) => facts.has("phase-sequence"))?.facts.one("phase-sequence"), report);
    }
  },
});
