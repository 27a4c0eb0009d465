import { signatoryOf } from "../../circuit/signatories.ts";
import { isOutsideWork } from "../../circuit/supply.ts";
import { inspectionsOf, isOlder } from "../../model/inspections.ts";
import { inOrder } from "../../text/order.ts";
import { boardRule, factSpot, wordSpot } from "../frame/rule.ts";

export default boardRule({
  id: "inspection/earlier-tests-signed",
  severity: "warning",
  since: "0.1",
  title: "A signature stands for tests made long before it.",
  why: "Who signs answers for tests of that visit. Readings of an earlier one are those of whoever made them then: test the circuit again, or record an inspection that states what it left out.",
  clauses: ["651.2", "653.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  work         existing
  tested       by "J.I." 2026-03-05
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven" {
    ^^^
      live 2016-03-05 {
        Zs           0.62 Ω
      }
    }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  work         existing
  tested       by "J.I." 2026-03-05
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven" {
      live 2016-03-05 {
        Zs           0.62 Ω
      }
      live 2026-03-05 {
        Zs           0.64 Ω
      }
    }
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    // An inspection says itself which circuits it is of.
    if (inspectionsOf(context.installation).length > 0) return;
    for (const study of studies) {
      const signed = signatoryOf("tested", study.facts, context);
      const on = signed?.args.on?.value;
      const latest = [...study.deadTests, ...study.liveTests].toSorted((a, b) => inOrder(b.on, a.on))[0];
      if (!signed || on === undefined || !latest || latest.on === "" || isOutsideWork(study)) continue;
      if (!isOlder(latest.on, on)) continue;
      report(wordSpot(study.way.header), {
        message: `Way ${study.way.id} is signed as tested on ${on} by ${signed.args.by.value}, but was last tested on ${latest.on}: test it, or record an inspection that leaves it out.`,
        related: [
          { spot: factSpot(signed), message: "The signature." },
          { spot: wordSpot(latest.header), message: `Its latest tests, of ${latest.on}.` },
        ],
      });
    }
  },
});
