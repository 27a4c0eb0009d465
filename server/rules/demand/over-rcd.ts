import { ratedParts } from "../../boards/board-ratings.ts";
import { reportOverloadedPart } from "../common/board-part.ts";
import { installationRule } from "../frame/rule.ts";

const sample = (rating: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  premises     dwelling
  board A "Main" {
    fed-from     supply
    rcd east     BS EN 61008 ${rating} 30 mA type A
    way 1 radial "Shower" {
      behind       east
      serves       shower
      load         10.5 kW
    }
    way 2 radial "Charging point" {
      behind       east
      serves       ev-charger
      Ib           32 A
    }
  }
}`;

export default installationRule({
  id: "demand/over-rcd",
  severity: "warning",
  since: "0.1",
  title: "The demand through an RCD exceeds its rating.",
  why: "An RCD does not trip on overload: it overheats until it may no longer trip at all. Move circuits to another RCD, give each its own, or fit a larger one.",
  clauses: ["536.4.202", "311.1"],
  examples: [
    { bad: sample("63 A").replace("type A\n", "type A\n                             ^^^^\n"), good: sample("80 A") },
  ],
  checkNode(node, report) {
    for (const part of ratedParts(node)) if (part.kind === "rcd") reportOverloadedPart(node, part, report);
  },
});
