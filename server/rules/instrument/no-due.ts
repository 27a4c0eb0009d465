import { dueOf, factsOf, instrumentsUsed } from "../../readings/instruments.ts";
import { testedWith } from "../common/instrument-sample.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "instrument/no-due",
  severity: "information",
  since: "0.1",
  title: "The calibration due date of an instrument is not stated.",
  why: "Without it nobody can show that its readings could be relied on on the day of the test.",
  clauses: ["643.1"],
  examples: [
    {
      bad: testedWith(['serial       "0417"'], "instrument"),
      good: testedWith(['serial       "0417"', "due          2026-11-03"]),
    },
  ],
  check(installation, report) {
    for (const instrument of instrumentsUsed(installation)) {
      const facts = factsOf(instrument);
      if (facts && (dueOf(facts) !== undefined || facts.isUnread("due"))) continue;
      const name = instrument.args.name.value;
      report(wordSpot(instrument), {
        message: `The calibration due date of ${name} is not stated: write due and the date.`,
      });
    }
  },
});
