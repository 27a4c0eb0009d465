import { ratedParts } from "../../boards/board-ratings.ts";
import { quotedIn } from "../../tables/source.ts";
import { reportUnprotectedPart } from "../common/board-part.ts";
import { installationRule } from "../frame/rule.ts";

const sample = (rating: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" {
      device       BS EN 60898 C63 6 kA
      feeds        B
    }
  }
  board B "Annexe" {
    fed-from     A
    main-switch  BS EN 60947-3 ${rating}
    way 1 radial "Kiln" {
      device       BS EN 60898 B32 6 kA
    }
    way 2 radial "Oven" {
      device       BS EN 60898 B32 6 kA
    }
  }
}`;

export default installationRule({
  id: "coordination/switch-below-device",
  severity: "warning",
  since: "0.1",
  title: "The main switch is rated below the device that protects it.",
  why: "A switch has no overload protection of its own, and diversity downstream is not accepted as protection. Its rating should be no less than that of the device upstream, or than the devices downstream together.",
  clauses: ["536.4.202"],
  examples: [
    { bad: sample("40 A").replace("40 A\n", "40 A\n                               ^^^^\n"), good: sample("63 A") },
  ],
  checkNode(node, report) {
    const source = quotedIn("536.4.202");
    for (const part of ratedParts(node)) if (part.kind === "switch") reportUnprotectedPart(part, source, report);
  },
});
