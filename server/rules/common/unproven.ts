/** A reading off its meter's range that leaves open whether it is within its limit. */

import type { Calculated } from "../../calc/result.ts";
import type { Quantity } from "../../model/values.ts";
import { amountOf, type Report } from "../frame/rule.ts";

/** `read` is the figure by name, `what` the clause that it leaves open: a warning, since nothing is known to be wrong. `sign`: of the reading. */
export const unproven = (
  read: string,
  what: string,
  limit: Calculated,
  { which, sign = ">" }: { readonly which?: string; readonly sign?: Quantity["sign"] } = {},
): Report => ({
  message: `${read} does not prove that ${what}: read it on a ${sign === "<" ? "lower" : "higher"} range.`,
  severity: "warning",
  limit: amountOf(limit, which),
  steps: limit.steps,
  source: limit.source,
});
