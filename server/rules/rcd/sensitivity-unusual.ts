import { rcdsAt } from "../../boards/board-rcds.ts";
import { residuals } from "../../calc/minimum-size.ts";
import { milliamps } from "../../calc/result.ts";
import { standardResiduals } from "../../tables/standard-values.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { amount, boardRule, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/sensitivity-unusual",
  severity: "warning",
  since: "0.1",
  title: "A rated residual current is not a standard one.",
  why: "3 mA or 300 mA in place of 30 mA is a single wrong digit, and changes what the device protects against.",
  clauses: [],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 35 mA type A
                                    ^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA type A
}`,
    },
  ],
  check({ studies }, report) {
    const row = rowOf(standardResiduals, { residual: 0.03 });
    for (const { rcd } of rcdsAt(studies)) {
      const { sensitivity } = rcd.fact.args;
      const known = residuals.some((residual) => Math.abs(residual - rcd.sensitivity) < 1e-9);
      if (known || !sensitivity || !row) continue;
      report(valueSpot(rcd.fact, sensitivity), {
        message: `${milliamps(rcd.sensitivity)} is not a standard IΔn: read it off the device again.`,
        value: amount(rcd.sensitivity, "A"),
        source: sourceOf(standardResiduals, row, "residual"),
      });
    }
  },
});
