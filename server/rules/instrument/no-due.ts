import { factsOf, instrumentsUsed } from "../../readings/instruments.ts";
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
      bad: `wayfile 1
instrument M1 "Multifunction tester" {
^^^^^^^^^^
  serial       "0417"
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
      good: `wayfile 1
instrument M1 "Multifunction tester" {
  serial       "0417"
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
    for (const instrument of instrumentsUsed(installation)) {
      if (factsOf(instrument)?.has("due")) continue;
      const name = instrument.args.name.value;
      report(wordSpot(instrument), {
        message: `The calibration due date of ${name} is not stated: write due and the date.`,
      });
    }
  },
});
