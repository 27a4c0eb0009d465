import { originSupply } from "../../circuit/supply.ts";
import { factSpot, installationRule } from "../frame/rule.ts";

export default installationRule({
  id: "loop/it-system-not-checked",
  severity: "warning",
  since: "0.1",
  title: "The loops of an IT system are not judged here.",
  why: "In an IT system a monitor reports the first fault to earth, and the second has to be disconnected; the limits of TN and TT do not apply. No finding here is not an approval.",
  clauses: ["411.6"],
  examples: [
    {
      bad: `wayfile 1
installation "Theatre wing" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
    earthing     IT
    ^^^^^^^^^^^^^^^
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "Theatre wing" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
    earthing     TN-S
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
  ],
  check(installation, report) {
    const supply = originSupply(installation.supply);
    if (supply.earthing !== "IT" || !supply.earthingFact || installation.boards.length === 0) return;
    report(factSpot(supply.earthingFact), {
      message:
        "The loops of an IT system are not judged here: check the insulation monitor and a second fault by 411.6.",
    });
  },
});
