import { deadTestsDue } from "../../circuit/supply.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "protective/earthing-not-stated",
  severity: "warning",
  since: "0.1",
  title: "The earthing conductor is not recorded.",
  why: "All fault protection depends on this one conductor. Without its size it cannot be judged, and nobody can tell whether it was inspected.",
  clauses: ["542.3", "542.3.1", "411.3.1.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
  ^^^^^^
    earthing     TN-S
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TN-S
    earthing-conductor 16 mm²
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
  ],
  check({ head, supply, boards }, report) {
    const fact = head.facts.one("supply");
    const [first] = boards;
    if (!fact || !supply?.has("earthing") || !first || !deadTestsDue({ installation: first.context.installation }))
      return;
    if (supply.has("earthing-conductor")) return;
    report(wordSpot(fact), {
      message: "The earthing conductor is not recorded: inspect it at the main earthing terminal, and write its size.",
    });
  },
});
