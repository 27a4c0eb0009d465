import { ratedParts } from "../../boards/board-ratings.ts";
import { networkOf } from "../../boards/network.ts";
import { sayOverloaded } from "../common/board-part.ts";
import { installationRule } from "../frame/rule.ts";

const sample = (rating: string) => `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  premises dwelling
  board A "Main" {
    fed-from supply
    rcd east BS EN 61008 ${rating} 30 mA type A
    way 1 radial "Shower" {
      behind  east
      serves  shower
      load    10.5 kW
    }
    way 2 radial "Charging point" {
      behind  east
      serves  ev-charger
      Ib      32 A
    }
  }
}`;

export default installationRule({
  id: "demand/over-rcd",
  severity: "warning",
  since: "0.1",
  title: "An RCD rated below what is drawn through it.",
  why: "An RCD does not open on overload: it overheats until it no longer opens at all. Move circuits to another RCD, give each its own, or fit a larger one.",
  clauses: ["536.4.202", "311.1"],
  examples: [
    { bad: sample("63 A").replace("type A\n", "type A\n                         ^^^^\n"), good: sample("80 A") },
  ],
  check(installation, report) {
    for (const node of networkOf(installation).nodes) {
      for (const part of ratedParts(node)) if (part.kind === "rcd") sayOverloaded(node, part, report);
    }
  },
});
