import { usesBeyond } from "../../readings/instruments.ts";
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
      bad: `wayfile 1
instrument M1 "Multifunction tester" {
  due          2026-02-01
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
