import { quotedIn } from "../../tables/source.ts";
import { factSpot, installationRule } from "../frame/rule.ts";

export default installationRule({
  id: "network/island-without-electrode",
  severity: "error",
  since: "0.1",
  title: "The installation runs as an island without an electrode of its own.",
  why: "With the network gone its earth may be gone as well, and no fault then makes a current large enough to trip anything. The neutral of the source is earthed by an electrode of the consumer’s own.",

  clauses: ["551.4.3.2.1", "826.1.1.2.1"],
  examples: [
    {
      bad: `wayfile 1
installation "House" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     dwelling
  supply {
    earthing     TN-C-S
    Ze           0.20 Ω
    island       "Battery inverter, whole house"
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
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
    island       "Battery inverter, whole house" electrode 84 Ω
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
  ],
  check({ supply }, report) {
    const island = supply?.one("island");
    if (!supply || !island || island.args.electrode || supply.has("electrode")) return;
    report(factSpot(island), {
      message:
        "Without the network nothing earths this source: fit an electrode of the consumer’s own, and write it with its resistance.",
      source: quotedIn("551.4.3.2.1 and 826.1.1.2.1"),
    });
  },
});
