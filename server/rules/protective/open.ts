import { supplementaryLimit } from "../../boards/supplementary.ts";
import { type Fact, quantityOf, type Reading } from "../../model/values.ts";
import { allBonding } from "../../readings/earthing.ts";
import { shown } from "../common/dead-words.ts";
import { amount, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "protective/open",
  severity: "error",
  since: "0.1",
  title: "An earthing or bonding conductor reads open.",
  why: "Off scale means that no path was found. An open earthing conductor leaves every exposed part of the installation without earth; open bonding lets a pipe or frame take up another voltage.",
  opens: true,
  clauses: ["643.2.1", "411.3.1.1", "411.3.1.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    earthing-conductor 16 mm²  continuity >20 Ω
                                          ^^^^^
    bonding      water 10 mm²  continuity >20 Ω
                                          ^^^^^
  }
  board A "Board" {
    fed-from     supply
    supplementary-bonding bathroom 4 mm² continuity >20 Ω
                                                    ^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    earthing-conductor 16 mm²  continuity 0.01 Ω
    bonding      water 10 mm²  continuity 0.03 Ω
  }
  board A "Board" {
    fed-from     supply
    supplementary-bonding bathroom 4 mm² continuity 0.12 Ω
  }
}`,
    },
  ],
  check(installation, report) {
    const conductor = installation.supply?.one("earthing-conductor");
    if (conductor) checkFact(conductor, conductor.args.continuity, "The earthing conductor", report);
    for (const bonding of allBonding(installation)) {
      checkFact(bonding, bonding.args.continuity, `The bonding of ${bonding.args.service.value}`, report);
    }
  },
  checkBoard({ board, studies }, report) {
    for (const fact of board.head.facts.all("supplementary-bonding")) {
      // Where its limit is known it is compared with that.
      const limit = supplementaryLimit(fact, studies);
      if (limit && !("missing" in limit)) continue;
      checkFact(fact, fact.args.continuity, `The supplementary bonding (${fact.args.place.value})`, report);
    }
  },
});

function checkFact(fact: Fact, reading: Reading | undefined, what: string, report: Reporter): void {
  const found = reading && quantityOf(reading);
  if (found?.sign !== ">") return;
  report(valueSpot(fact, found), {
    message: `${what} is off scale (${shown(found)}): no continuity. Find the break before anything is energised.`,
    value: amount(found.value, "Ω"),
  });
}
