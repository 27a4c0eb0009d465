import { fallsShort } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { ohms, relation } from "../../calc/result.ts";
import { boardImpedance } from "../../circuit/board-impedance.ts";
import type { ExactReading } from "../../circuit/supply.ts";
import type { Context } from "../../model/installation.ts";
import { originImpedance } from "../../readings/loop.ts";
import { amount, boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "loop/board-below-upstream",
  severity: "warning",
  since: "0.1",
  title: "Zdb is lower than the loop impedance of what feeds the board.",
  why: "Loop impedance cannot fall along a feeder. Either metal is in parallel with its protective conductor, or the two figures are from different days or boards.",
  clauses: ["411.4.4"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           0.38 Ω
  }
  board A "Main" {
    fed-from     supply
    Zdb          0.21 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           0.38 Ω
  }
  board A "Main" {
    fed-from     supply
    Zdb          0.41 Ω
  }
}`,
    },
  ],
  check({ context }, report) {
    const own = boardImpedance(context);
    const above = upstreamImpedance(context);
    if (own?.name !== "Zdb" || !above) return;
    // What a distributor declares is the most a supply may have: most have less.
    if (above.fact.provenance === "declared") return;
    if (context.upstream[0]?.feeder?.facts.has("parallel-path")) return;
    const allowance = practiceOf("loop-below");
    if (!fallsShort(own.value, above.value - allowance.value)) return;
    // Ze is read with the bonding disconnected, Zdb with all of it in parallel: at the origin that explains much.
    const atOrigin = context.upstream.length === 0;
    report(factSpot(own.fact), {
      message: `Zdb ${ohms(own.value)} is below the ${ohms(above.value)} upstream: ${atOrigin ? "bonding in parallel may explain it, or the two are from different days" : "record metal in parallel with the feeder, or measure both again"}.`,
      ...(atOrigin ? { severity: "information" } : {}),
      value: amount(own.value, "Ω"),
      limit: amount(above.value, "Ω"),
      least: true,
      steps: [relation("Zdb ≥ Z upstream", ohms(own.value), ohms(above.value))],
      source: allowance.source,
      related: [{ spot: factSpot(above.fact), message: `Loop impedance upstream: ${ohms(above.value)}.` }],
    });
  },
});

function upstreamImpedance(context: Context): ExactReading | undefined {
  for (const { board } of context.upstream) {
    const found = boardImpedance({ ...context, board });
    if (found) return found;
  }
  return originImpedance(context);
}
