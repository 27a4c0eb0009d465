import { ratedParts } from "../../boards/board-ratings.ts";
import { reportUnprotectedPart } from "../common/board-part.ts";
import { installationRule } from "../frame/rule.ts";

const sample = (rating: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" {
      device       BS 88-2 160 A 80 kA gG
      feeds        B
    }
  }
  board B "Annexe" {
    fed-from     A
    busbar       ${rating}
    way 1 radial "Kiln" {
      device       BS EN 60898 C63 10 kA
    }
    way 2 radial "Oven" {
      device       BS EN 60898 C63 10 kA
    }
    way 3 radial "Lift" {
      device       BS EN 60898 C40 10 kA
    }
  }
}`;

export default installationRule({
  id: "coordination/busbar-below-device",
  severity: "warning",
  since: "0.1",
  title: "The busbars are rated below the device that protects them.",
  why: "Busbars overheat and burn without anything opening. Their rating should be no less than that of the device upstream, or than the devices they feed together.",
  clauses: ["536.4.202", "433.1.1"],
  examples: [{ bad: sample("125 A").replace("125 A\n", "125 A\n                 ^^^^^\n"), good: sample("160 A") }],
  checkNode(node, report) {
    const source = {
      ref: "BS 7671:2018+A2:2022, 433.1.1; BS EN 61439-1, rated current InA",
      standing: "memory",
    } as const;
    for (const part of ratedParts(node)) if (part.kind === "busbar") reportUnprotectedPart(part, source, report);
  },
});
