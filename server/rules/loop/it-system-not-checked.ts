import { originSupply } from "../../circuit/supply.ts";
import { factSpot, installationRule } from "../frame/rule.ts";

export default installationRule({
  id: "loop/it-system-not-checked",
  severity: "information",
  since: "0.1",
  title: "A supply whose circuits are not judged by their loop.",
  why: "In an IT system the first fault to earth is watched by a monitor and the second is what must be cleared; the limits of TN and TT do not fit. Silence here would look like approval.",
  clauses: ["411.6"],
  examples: [
    {
      bad: `wayfile 1
installation "Theatre wing" {
  standard  BS 7671:2018+A2:2022
  stage     design
  supply {
    earthing  IT
    ^^^^^^^^^^^^
  }
  board A "Board" {
    fed-from  supply
  }
}`,
      good: `wayfile 1
installation "Theatre wing" {
  standard  BS 7671:2018+A2:2022
  stage     design
  supply {
    earthing  TN-S
  }
  board A "Board" {
    fed-from  supply
  }
}`,
    },
  ],
  check(installation, report) {
    const supply = originSupply(installation.supply);
    if (supply.earthing !== "IT" || !supply.earthingFact || installation.boards.length === 0) return;
    report(factSpot(supply.earthingFact), {
      message:
        "The loops of an IT system are not judged here: its first fault is watched by an insulation monitor, its second by calculation (411.6).",
    });
  },
});
