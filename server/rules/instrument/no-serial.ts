import { factsOf, instrumentsUsed } from "../../readings/instruments.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "instrument/no-serial",
  severity: "information",
  since: "0.1",
  title: "An instrument without its serial number.",
  why: "Two testers of one make read alike in a schedule. The number leads to the calibration certificate.",
  clauses: ["643.1"],
  examples: [
    {
      bad: `wayfile 1
instrument M1 "Multifunction tester" {
^^^^^^^^^^
  due     2026-11-03
}
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  board A "Front board" {
    fed-from  supply
    way 1 radial "Oven" {
      live 2026-03-05 with M1 {
        Zs  0.62 Ω
      }
    }
  }
}`,
      good: `wayfile 1
instrument M1 "Multifunction tester" {
  serial  "0417"
  due     2026-11-03
}
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  board A "Front board" {
    fed-from  supply
    way 1 radial "Oven" {
      live 2026-03-05 with M1 {
        Zs  0.62 Ω
      }
    }
  }
}`,
    },
  ],
  check(installation, report) {
    for (const instrument of instrumentsUsed(installation)) {
      if (factsOf(instrument)?.has("serial")) continue;
      const name = instrument.args.name.value;
      report(wordSpot(instrument), { message: `Which instrument is ${name}? Write its serial number.` });
    }
  },
});
