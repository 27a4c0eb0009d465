import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/three-phase-on-single-phase",
  severity: "error",
  since: "0.1",
  title: "A three-phase circuit is connected to a single-phase board.",
  why: "There are no two other lines to connect it to: either the board or the circuit is recorded wrongly, and its load, its loop and its cable are calculated for the wrong system.",

  clauses: ["512.1.1", "314.1"],
  examples: [
    {
      bad: `way 1 radial "Compressor" {
  device       BS EN 60898 C16 6 kA
  phase        three
  ^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Compressor" {
  device       BS EN 60898 C16 6 kA
}`,
    },
  ],
  check({ facts, way, isSpare, boardIsThreePhase, context }, report) {
    const phase = facts.one("phase");
    if (isSpare || boardIsThreePhase || phase?.args.phase.value !== "three") return;
    if (context.board.facts.isUnread("phases") || context.supply?.isUnread("phases")) return;
    report(factSpot(phase), {
      message: `Way ${way.id} has three lines, but board ${context.board.name} is single-phase: write phases three for supply and board, or correct the way.`,
    });
  },
});
