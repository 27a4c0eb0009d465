import { usesBeyond } from "../../readings/instruments.ts";
import { testedWith } from "../common/instrument-sample.ts";
import { sameTests, usedToo } from "../common/instrument-words.ts";
import { factSpot, installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "instrument/calibration-lapsed",
  severity: "warning",
  since: "0.1",
  title: "A test was made after the instrument's calibration had run out.",
  why: "The reading may be right, but nothing shows it. Have the instrument calibrated: if it is found accurate, record that beside the tests; if not, make them again.",
  clauses: ["643.1"],
  examples: [
    {
      bad: testedWith(["due          2026-02-01"], "test"),
      good: testedWith(["due          2026-11-03"]),
    },
  ],
  check(installation, report) {
    for (const { name, facts, uses } of usesBeyond(installation, "after", (of) => of.one("due")?.args.on.value)) {
      const due = facts.one("due");
      const [first, ...others] = uses;
      if (!due || !first) continue;
      report(valueSpot(first.day.header, first.name), {
        message: `The calibration of ${name} ran out on ${due.args.on.value}, before this test on ${first.day.on.value}${sameTests(others)}.`,
        related: [
          { spot: factSpot(due), message: `Calibration of ${name} due on ${due.args.on.value}.` },
          ...usedToo(others),
        ],
      });
    }
  },
});
