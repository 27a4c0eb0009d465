import { gradeOfMissing } from "../../circuit/describe.ts";
import { faultsNoted } from "../../circuit/faults.ts";
import { liveTestsDue } from "../../circuit/supply.ts";
import { lineInBlock } from "../common/writing.ts";
import { boardRule, wordSpot } from "../frame/rule.ts";

export default boardRule({
  id: "fault/current-missing",
  severity: "error",
  since: "0.1",
  title: "The prospective fault current at a board is not recorded.",
  why: "Every device there must be able to break it, and the greatest fault current is at the board, not at a socket. Measure it, calculate it, or ask the distributor.",
  clauses: ["434.1", "643.7.3.201"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TN-S
    Ipf          1.2 kA
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" { feeds B }
  }
  board B "Annexe" {
  ^^^^^
    fed-from     A
    way 1 radial "Heater" { device BS EN 60898 B16 6 kA }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TN-S
    Ipf          1.2 kA
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" { feeds B }
  }
  board B "Annexe" {
    fed-from     A
    Ipf          0.8 kA
    way 1 radial "Heater" { device BS EN 60898 B16 6 kA }
  }
}`,
    },
  ],
  check({ board, context, studies }, report) {
    // The origin has a check of its own, with all that a supply may lack.
    if (board.head.facts.one("fed-from")?.args.from.value === "supply" || !liveTestsDue(context)) return;
    if (faultsNoted(context) || !studies.some(({ device }) => device)) return;
    // A half-written line may be the one that is missed.
    if (board.head.facts.broken.length > 0) return;
    report(wordSpot(board.head.header), {
      ...gradeOfMissing(context),
      message: "The prospective fault current at this board is not recorded: measure it, or write LIM with the reason.",
      fixes: lineInBlock(board.head.header, 'Ipf LIM "…"', "Record why it was not measured"),
    });
  },
});
