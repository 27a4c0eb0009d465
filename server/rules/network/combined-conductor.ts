import { factSpot, installationRule } from "../frame/rule.ts";

export default installationRule({
  id: "network/combined-conductor",
  severity: "error",
  since: "0.1",
  title: "Neutral and protective conductor are combined in the installation.",
  why: "A break in the conductor makes every exposed part live, and an RCD cannot see an earth fault. A consumer may not combine them: the supply may (TN-C-S), the installation not.",

  clauses: ["411.4.5", "8(4)"],
  examples: [
    {
      bad: `wayfile 1
installation "House" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     dwelling
  supply {
    earthing     TN-C
    ^^^^^^^^^^^^^^^^^
    Ze           0.20 Ω
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "House" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     dwelling
  supply {
    earthing     TN-C-S
    Ze           0.20 Ω
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
  ],
  check({ supply }, report) {
    const earthing = supply?.one("earthing");
    if (earthing?.args.system.value !== "TN-C") return;
    report(factSpot(earthing), {
      message:
        "TN-C is not allowed in a consumer’s installation, and no RCD works on it: separate neutral and earth at the origin, and write TN-C-S.",
      source: { ref: "ESQCR 2002, Regulation 8(4); BS 7671:2018+A2:2022, 411.4.5", standing: "quoted" },
    });
  },
});
