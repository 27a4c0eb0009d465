import { keptWith } from "../../analysis/kept.ts";
import { liveOfBoard } from "../../analysis/rcd-tests.ts";
import { testsOf } from "../../analysis/supply.ts";
import type { Fact, Facts } from "../../model/values.ts";
import { factSpot, installationRule } from "../rule.ts";

/** The word of a way's latest tests. */
const latestOf = keptWith((facts: Facts<"way">) => testsOf<"live">(facts.all("live"))[0]?.facts.one("phase-sequence"));

export default installationRule({
  id: "live/phase-sequence-reversed",
  severity: "error",
  since: "0.1",
  title: "A phase sequence out of order.",
  why: "Motors connected here run backwards. Change two of the lines over where the order is lost, and check every board below it again.",
  clauses: ["643.9"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `live 2026-03-05 {
  phase-sequence  reversed
  ^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `live 2026-03-05 {
  phase-sequence  ok
}`,
    },
  ],
  check(installation, report) {
    const stated: (Fact | undefined)[] = [installation.supply?.one("phase-sequence")];
    for (const { board, context } of installation.boards) {
      // The latest word counts: a reversal that was put right stays in the record.
      stated.push(liveOfBoard(context)[0]?.facts.one("phase-sequence") ?? board.head.facts.one("phase-sequence"));
      for (const way of board.ways) stated.push(latestOf(way.facts));
    }
    for (const fact of stated) {
      const verdict = fact?.args.verdict as { value?: string } | undefined;
      if (fact && verdict?.value === "reversed")
        report(factSpot(fact), {
          message: "The phase sequence is out of order: motors on it run backwards. Change two lines over.",
        });
    }
  },
});
