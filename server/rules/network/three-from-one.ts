import { isThreePhase } from "../../model/three-lines.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

const sample = (phases: string, mark = "") => `wayfile 1
installation "Shop" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
    earthing     TN-S
    phases       single
    Ze           0.32 Ω
    Ipf          0.8 kA
  }
  board A "Front" {
    fed-from     supply
    way 1 feeder "Machines" {
      device       BS EN 60898 C40 6 kA
      feeds        B
    }
  }
  board B "Machines" {
    fed-from     A
    phases       ${phases}
${mark}  }
}`;

export default boardRule({
  id: "network/three-from-one",
  severity: "warning",
  since: "0.1",
  title: "A three-phase board is fed from a single-phase one.",
  why: "Its demand, its loops and its drops are calculated as if three lines of the supply reached it. Either one of the two is recorded wrongly, or a converter makes the lines: then the loop and the fault current behind it are the converter’s, and no figure of the supply gives them.",
  clauses: ["312.1", "313.1"],
  examples: [{ bad: sample("three", `${" ".repeat(4)}${"^".repeat(18)}\n`), good: sample("single") }],
  check({ context }, report) {
    const { board, upstream, supply } = context;
    const phases = board.facts.one("phases");
    const [above, ...others] = upstream;
    if (!above || phases?.args.count.value !== "three" || supply?.isUnread("phases")) return;
    if (above.board.facts.isUnread("phases") || isThreePhase({ ...context, board: above.board, upstream: others }))
      return;
    report(factSpot(phases), {
      message: `Board ${board.name} has three lines, but board ${above.board.name}, which feeds it, is single-phase: correct one of the two. If a converter makes them, no figure of the supply gives its loops and fault currents: read them there, and record a departure with how.`,
    });
  },
});
