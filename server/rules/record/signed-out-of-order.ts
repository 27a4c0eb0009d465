import { signatoryOf } from "../../circuit/signatories.ts";
import type { Context } from "../../model/installation.ts";
import type { Facts } from "../../model/values.ts";
import { capital } from "../../text/words.ts";
import { boardRule, factSpot, type Reporter } from "../frame/rule.ts";

const order = [
  ["designed", "installed"],
  ["installed", "tested"],
  ["designed", "tested"],
] as const;

/** The first pair out of order; the later of the two is marked. */
function checkBlock(facts: Facts<"way"> | undefined, context: Context, seen: Set<unknown>, report: Reporter): void {
  for (const [first, second] of order) {
    const before = signatoryOf(first, facts, context);
    const after = signatoryOf(second, facts, context);
    const [from, to] = [before?.args.on?.value, after?.args.on?.value];
    if (!before || !after || from === undefined || to === undefined || from <= to || seen.has(after)) continue;
    seen.add(after);
    report(factSpot(after), {
      message: `${capital(second)} on ${to}, but ${first} on ${from}: which date is right?`,
      related: [{ spot: factSpot(before), message: `${capital(first)} on ${from}.` }],
    });
  }
}

export default boardRule({
  id: "record/signed-out-of-order",
  severity: "warning",
  since: "0.1",
  title: "The dates of design, installation and testing are out of sequence.",
  why: "Work is designed, then installed, then tested. A date out of sequence is a slip, or something was done twice and only half of it is recorded.",
  clauses: ["644.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
  designed     by "K.A." 2026-03-20
  installed    by "D.O." 2026-02-27
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Oven" {
  designed     by "K.A." 2026-01-20
  installed    by "D.O." 2026-02-27
}`,
    },
  ],
  check({ board, context }, report) {
    const seen = new Set<unknown>();
    checkBlock(undefined, context, seen, report);
    for (const way of board.ways) checkBlock(way.facts, context, seen, report);
  },
});
