import { ratedParts } from "../../boards/board-ratings.ts";
import { laterRule } from "../../circuit/describe.ts";
import { quotedIn } from "../../tables/source.ts";
import { reportUnprotectedPart } from "../common/board-part.ts";
import { installationRule } from "../frame/rule.ts";

const sample = (rating: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    cutout       BS 88-3 100 A
  }
  board A "Main" {
    fed-from     supply
    rcd east     BS EN 61008 ${rating} 30 mA type A
    way 1 ring "Sockets" {
      device       BS EN 60898 B32 6 kA
      behind       east
    }
    way 2 radial "Cooker" {
      device       BS EN 60898 B32 6 kA
      behind       east
    }
    way 3 radial "Water heater" {
      device       BS EN 60898 B16 6 kA
      behind       east
    }
  }
}`;

export default installationRule({
  id: "coordination/rcd-below-device",
  severity: "error",
  since: "0.1",
  title: "An RCD is not protected against overload.",
  why: "An RCD trips on residual current, never on overload, and diversity of its circuits does not count as protection. Its rating should be no less than that of the device upstream, or than the devices downstream together.",
  clauses: ["536.4.202", "536.4.3.2"],
  examples: [
    {
      bad: sample("63 A").replace("type A\n", "type A\n                             ^^^^\n"),
      good: sample("80 A"),
    },
  ],
  checkNode(node, report) {
    const source = quotedIn("536.4.202");
    const { context } = node;
    // Before the 18th Edition diversity was taken into account here, so that older work is asked about and no more.
    const later = context.edition?.switchOverload ? laterRule(context).severity : "information";
    for (const part of ratedParts(node)) if (part.kind === "rcd") reportUnprotectedPart(part, source, report, later);
  },
});
