import { rcdTypes } from "../../../grammar/choices.ts";
import { rcdsAt, typeSpan } from "../../boards/board-rcds.ts";
import { workOf } from "../../circuit/supply.ts";
import { wordsAfter } from "../common/writing.ts";
import { boardRule, factSpot, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/type-not-stated",
  severity: "information",
  since: "0.1",
  title: "The type of an RCD is not stated.",
  why: "Which faults it detects, and how it is tested, depends on its type: the symbol on its front.",
  clauses: ["531.3.3"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA
                                    ^^^^^
  serves       sockets
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       sockets
}`,
    },
  ],
  check({ context, studies }, report) {
    if (!context.edition?.typeAcRestricted) return;
    for (const { rcd, ways: all } of rcdsAt(studies)) {
      const ways = all.filter((way) => workOf(way) !== "existing");
      if (ways.length === 0) continue;
      const span = typeSpan(rcd);
      if (rcd.type || !span) continue;
      const serves = ways[0]?.facts.one("serves");
      report(valueSpot(rcd.fact, span), {
        message: "The type of this RCD is not stated: AC, A, F or B, by the symbol on its front.",
        related: serves ? [{ spot: factSpot(serves), message: "The use of the circuit, which decides the type." }] : [],
        fixes: Object.keys(rcdTypes).flatMap((type) => wordsAfter(rcd.fact, `type ${type}`)),
      });
    }
  },
});
