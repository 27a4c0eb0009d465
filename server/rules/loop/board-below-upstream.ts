import { fallsShort } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { ohms, relation } from "../../calc/result.ts";
import { boardImpedance } from "../../circuit/board-impedance.ts";
import type { ExactReading } from "../../circuit/supply.ts";
import type { Context } from "../../model/installation.ts";
import { quantityOf, readingAt } from "../../model/values.ts";
import { originImpedance } from "../../readings/loop.ts";
import { type Uncertainty, uncertaintyOnBoard } from "../../readings/uncertainty.ts";
import { beyondTolerance, together, uncertaintySteps } from "../common/uncertainty-words.ts";
import { amount, boardRule, factSpot } from "../frame/rule.ts";

/** A meter that may be out by 0.04 Ω above and by as much below. */
const onMeter = (Zdb: string) => `wayfile 1
instrument M1 "Loop tester" {
  accuracy     loop 3 % 3 digits
}
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           0.32 Ω
    measured     2026-03-05 with M1
  }
  board A "Main" {
    fed-from     supply
    live 2026-03-05 with M1 {
      Zdb          ${Zdb}
    }
  }
}`;

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
    {
      bad: onMeter("0.15 Ω\n      ^^^^^^^^^^^^^^^^^^^"),
      good: onMeter("0.29 Ω"),
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
    const meter = together([uncertaintyAt(context, own), uncertaintyAt(above.context, above)], ohms);
    const by = above.value - allowance.value - own.value;
    if (atOrigin && meter && by < meter.value) return;
    report(factSpot(own.fact), {
      message: `Zdb ${ohms(own.value)} is below the ${ohms(above.value)} upstream: ${atOrigin ? "bonding in parallel may explain it, or the two are from different days" : "record metal in parallel with the feeder, or measure both again"}.${beyondTolerance(meter, by)}`,
      ...(atOrigin ? { severity: "information" } : {}),
      value: amount(own.value, "Ω"),
      limit: amount(above.value, "Ω"),
      least: true,
      steps: [relation("Zdb ≥ Z upstream", ohms(own.value), ohms(above.value)), ...uncertaintySteps(meter)],
      source: allowance.source,
      related: [{ spot: factSpot(above.fact), message: `Loop impedance upstream: ${ohms(above.value)}.` }],
    });
  },
});

/** A loop that was read, and where. */
interface ReadAt extends ExactReading {
  readonly context: Context;
}

function upstreamImpedance(context: Context): ReadAt | undefined {
  for (const { board } of context.upstream) {
    const at = { ...context, board };
    const found = boardImpedance(at);
    if (found) return { ...found, context: at };
  }
  const found = originImpedance(context);
  return found && { ...found, context };
}

function uncertaintyAt(context: Context, { fact }: ExactReading): Uncertainty | undefined {
  const quantity = quantityOf(readingAt(fact));
  return quantity && uncertaintyOnBoard(context, fact, quantity);
}
