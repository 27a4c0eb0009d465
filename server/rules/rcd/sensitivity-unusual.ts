import { rcdsAt } from "../../boards/board-rcds.ts";
import { residuals } from "../../calc/index.ts";
import { milliamps } from "../../calc/result.ts";
import type { Quantity } from "../../model/values.ts";
import { standardResiduals } from "../../tables/standard-values.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { amount, boardRule, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/sensitivity-unusual",
  severity: "warning",
  since: "0.1",
  title: "A rated residual current that RCDs are not made in.",
  why: "3 mA or 300 mA for 30 mA is one slip of a finger, and changes what the device protects.",
  clauses: [],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  device  BS EN 61009 B32 6 kA 35 mA type A
                               ^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device  BS EN 61009 B32 6 kA 30 mA type A
}`,
    },
  ],
  check({ studies }, report) {
    const row = rowOf(standardResiduals, { residual: 0.03 });
    for (const { rcd } of rcdsAt(studies)) {
      const { sensitivity } = rcd.fact.args as { sensitivity?: Quantity };
      const known = residuals.some((residual) => Math.abs(residual - rcd.sensitivity) < 1e-9);
      if (known || !sensitivity || !row) continue;
      report(valueSpot(rcd.fact, sensitivity), {
        message: `RCDs are not made for ${milliamps(rcd.sensitivity)}: read it off the device again.`,
        value: amount(rcd.sensitivity, "A"),
        source: sourceOf(standardResiduals, row, "residual"),
      });
    }
  },
});
