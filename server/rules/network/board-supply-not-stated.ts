import { boardsByName, feedersIn } from "../../boards/feeders.ts";
import { lineInBlock } from "../common/writing.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "network/board-supply-not-stated",
  severity: "warning",
  since: "0.1",
  title: "The supply to a board is not stated.",
  why: "Without it no loop impedance, fault current or voltage drop of the board's ways can be calculated from the supply. Write fed-from with the supply or the board upstream.",
  clauses: ["313.1", "314.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  board A "Front board" {
  ^^^^^
    main-switch  BS EN 60947-3 100 A
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  board A "Front board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A
  }
}`,
    },
  ],
  check(installation, report) {
    const feeders = feedersIn(installation);
    for (const { head } of boardsByName(installation).values()) {
      if (head.name === "" || head.facts.has("fed-from")) continue;
      const above = feeders.filter((feeder) => feeder.to === head.name);
      const sources = above.length > 0 ? above.map(({ board }) => board.head.name) : ["supply"];
      const known = above[0] ? ` Way ${above[0].way.id} of board ${sources[0]} is recorded as feeding it.` : "";
      report(wordSpot(head.header), {
        message: `The supply to board ${head.name} is not stated: write fed-from with the supply or a board.${known}`,
        fixes: [...new Set(sources)].flatMap((source) => lineInBlock(head.header, `fed-from ${source}`)),
      });
    }
  },
});
