import { liveTestsDue } from "../../circuit/supply.ts";
import { bondsSomething } from "../../readings/earthing.ts";
import { factSpot, installationRule } from "../frame/rule.ts";

export default installationRule({
  id: "protective/bonding-size-missing",
  severity: "warning",
  since: "0.1",
  title: "The size of a main bonding conductor is not stated.",
  why: "Whether it is large enough for this supply cannot be judged, and the next person has to look for it again.",
  clauses: ["544.1.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  stage        tested
  supply {
    earthing     TN-C-S
    bonding      water
    ^^^^^^^^^^^^^^^^^^
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "Sample" {
  stage        tested
  supply {
    earthing     TN-C-S
    bonding      water 10 mm²
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
  ],
  check({ supply, boards }, report) {
    const [first] = boards;
    if (!supply || !first || !liveTestsDue({ installation: first.context.installation })) return;
    for (const bonding of supply.all("bonding")) {
      if (bonding.args.size || !bondsSomething(bonding)) continue;
      report(factSpot(bonding), {
        message: `The size of the bonding of ${bonding.args.service.value} is not stated: inspect it and write its size.`,
      });
    }
  },
});
