import { usesBeyond } from "../../readings/instruments.ts";
import { testedWith } from "../common/instrument-sample.ts";
import { sameTests, usedToo } from "../common/instrument-words.ts";
import { factSpot, installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "instrument/test-before-calibration",
  severity: "information",
  since: "0.1",
  title: "A test was made before the recorded calibration of the instrument.",
  why: "The recorded calibration does not cover the day of the test. Give a recalibrated instrument a line of its own, so that older tests keep the calibration they were made under.",
  clauses: ["643.1"],
  examples: [
    {
      bad: testedWith(["calibrated   2026-03-20", "due          2027-03-20"], "test"),
      good: testedWith(["calibrated   2025-11-03", "due          2026-11-03"]),
    },
  ],
  check(installation, report) {
    const early = usesBeyond(installation, "before", (of) => of.one("calibrated")?.args.on.value);
    for (const { name, facts, uses } of early) {
      const calibrated = facts.one("calibrated");
      const [first, ...others] = uses;
      if (!calibrated || !first) continue;
      report(valueSpot(first.day.header, first.name), {
        message: `${name} was calibrated on ${calibrated.args.on.value}, after this test on ${first.day.on.value}${sameTests(others)}. Under which calibration was it made?`,
        related: [
          { spot: factSpot(calibrated), message: `${name} was calibrated on ${calibrated.args.on.value}.` },
          ...usedToo(others),
        ],
      });
    }
  },
});
