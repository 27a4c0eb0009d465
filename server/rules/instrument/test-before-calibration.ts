import type { Facts } from "../../model/values.ts";
import { calibrationsOf, type Span, usesWithin } from "../../readings/instruments.ts";
import { testedWith } from "../common/instrument-sample.ts";
import { sameTests, usedToo } from "../common/instrument-words.ts";
import { factSpot, installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "instrument/test-before-calibration",
  severity: "information",
  since: "0.1",
  title: "A test was made before the recorded calibration of the instrument.",
  why: "No recorded calibration covers the day of the test. Keep the line of each calibration when a new one is added: a test is judged by the one in force on its day.",
  clauses: ["643.1"],
  examples: [
    {
      bad: testedWith(["calibrated   2026-03-20", "due          2027-03-20"], "test"),
      good: testedWith(["calibrated   2025-11-03", "due          2026-11-03"]),
    },
  ],
  check(installation, report) {
    for (const { name, uses, span } of usesWithin(installation, beforeFirst)) {
      const [first, ...others] = uses;
      if (!first) continue;
      report(valueSpot(first.day.header, first.name), {
        message: `${name} was calibrated on ${span.before}, after this test on ${first.day.on.value}${sameTests(others)}. Write the calibration it was made under as a line of its own.`,
        related: [
          { spot: factSpot(span.fact), message: `${name} was calibrated on ${span.before}.` },
          ...usedToo(others),
        ],
      });
    }
  },
});

/** The days before the first calibration on record. */
function beforeFirst(facts: Facts<"instrument">): readonly Span[] {
  const [first] = calibrationsOf(facts);
  return first && first.from !== "" ? [{ before: first.from, fact: first.fact }] : [];
}
