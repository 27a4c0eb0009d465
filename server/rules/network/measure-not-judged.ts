import { factSpot, type Reporter, type Spot, wayRule } from "../frame/rule.ts";

/** Where what is not judged is to be looked for. */
const elsewhere = {
  separation: "Electrical separation: look at the source, the one item it supplies and its insulation by 413.3.",
  selv: "SELV: look at the source and at its separation from all other circuits by 414.3 and 414.4.",
  pelv: "PELV: look at the source, its separation and its earth by 414.3 and 414.4.",
  it: "IT system: look at the insulation monitor and at a second fault by 411.6.",
  dc: "Direct current: look at the polarity, the devices and the disconnection with their makers’ figures.",
} as const;

export default wayRule({
  id: "network/measure-not-judged",
  severity: "information",
  since: "0.1",
  title: "A circuit is not protected by automatic disconnection, and is not judged.",
  why: "Loops, times, drops and RCDs belong to automatic disconnection of the supply. Where another measure protects, no finding is no approval.",
  clauses: ["411.6", "413", "414"],
  examples: [
    {
      bad: `way 1 radial "Shaver" {
  device       BS EN 60898 B6 6 kA
  protective-measure separation "Shaver unit"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Shaver" {
  device       BS EN 60898 B6 6 kA
}`,
    },
  ],
  check({ facts, context, way, isSpare }, report) {
    const own = facts.one("protective-measure");
    if (own) return said(own.args.measure.value, factSpot(own), report);
    const board = context.board.facts.one("protective-measure");
    const { header } = way;
    if (board && !isSpare)
      said(board.args.measure.value, { segment: header.segment, start: header.start, end: header.wordEnd }, report);
  },
});

function said(measure: keyof typeof elsewhere, spot: Spot, report: Reporter): void {
  report(spot, { message: `Loops, times, drops and RCDs are not judged here. ${elsewhere[measure]}` });
}
