import { usesBeyond } from "../../readings/instruments.ts";
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
      bad: `wayfile 1
instrument M1 "Multifunction tester" {
  calibrated   2026-03-20
  due          2027-03-20
}
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven" {
      live 2026-03-05 with M1 {
                           ^^
        Zs           0.62 Ω
      }
    }
  }
}`,
      good: `wayfile 1
instrument M1 "Multifunction tester" {
  calibrated   2025-11-03
  due          2026-11-03
}
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven" {
      live 2026-03-05 with M1 {
        Zs           0.62 Ω
      }
    }
  }
}`,
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
