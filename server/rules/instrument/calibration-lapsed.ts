import { lapsesOf, usesWithin } from "../../readings/instruments.ts";
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
    {
      bad: testedWith(["calibrated   2025-01-10 due 2026-01-10", "calibrated   2026-03-20 due 2027-03-20"], "test"),
      good: testedWith(["calibrated   2025-04-10 due 2026-04-10", "calibrated   2026-03-20 due 2027-03-20"]),
    },
  ],
  check(installation, report) {
    for (const { name, uses, span } of usesWithin(installation, lapsesOf)) {
      const [first, ...others] = uses;
      if (!first) continue;
      report(valueSpot(first.day.header, first.name), {
        message: `The calibration of ${name} ran out on ${span.day}, before this test on ${first.day.on.value}${sameTests(others)}.`,
        related: [
          { spot: factSpot(span.fact), message: `Calibration of ${name} due on ${span.day}.` },
          ...usedToo(others),
        ],
      });
    }
  },
});
