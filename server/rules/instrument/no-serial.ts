import { factsOf, instrumentsUsed } from "../../readings/instruments.ts";
import { testedWith } from "../common/instrument-sample.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "instrument/no-serial",
  severity: "information",
  since: "0.1",
  title: "The serial number of an instrument is not stated.",
  why: "Two instruments of one make look alike in a schedule. The serial number leads to the calibration certificate.",
  clauses: ["643.1"],
  examples: [
    {
      bad: testedWith(["due          2026-11-03"], "instrument"),
      good: testedWith(['serial       "0417"', "due          2026-11-03"]),
    },
  ],
  check(installation, report) {
    for (const instrument of instrumentsUsed(installation)) {
      if (factsOf(instrument)?.has("serial")) continue;
      const name = instrument.args.name.value;
      report(wordSpot(instrument), {
        message: `The serial number of ${name} is not stated: write serial and the number.`,
      });
    }
  },
});
