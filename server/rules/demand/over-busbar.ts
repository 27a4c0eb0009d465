import { ratedParts } from "../../boards/board-ratings.ts";
import { reportOverloadedPart } from "../common/board-part.ts";
import { installationRule } from "../frame/rule.ts";

const sample = (rating: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  premises     dwelling
  board A "Main" {
    fed-from     supply
    busbar       ${rating}
    way 1 radial "Shower" {
      serves       shower
      load         10.5 kW
    }
    way 2 radial "Charging point" {
      serves       ev-charger
      Ib           32 A
    }
  }
}`;

export default installationRule({
  id: "demand/over-busbar",
  severity: "warning",
  since: "0.1",
  title: "The demand of a board exceeds the rating of its busbars.",
  why: "Busbars have no protection of their own: they overheat, and the devices on them trip without apparent cause or burn. Fit a board with larger busbars, or move circuits to another board.",
  clauses: ["311.1", "536.4.202"],
  examples: [{ bad: sample("63 A").replace("63 A\n", "63 A\n                 ^^^^\n"), good: sample("100 A") }],
  checkNode(node, report) {
    for (const part of ratedParts(node)) if (part.kind === "busbar") reportOverloadedPart(node, part, report);
  },
});
