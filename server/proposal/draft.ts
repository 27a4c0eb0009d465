import type { Step } from "../calc/result.ts";
import type { Source } from "../tables/source.ts";
import type { Decision, RuledOut } from "./proposal.ts";

/** A proposal on its way: what is decided so far. */
export interface Draft {
  readonly decisions: Decision[];
  readonly ruledOut: RuledOut[];
  readonly open: string[];
}

/** A decision; a source only where there is one. */
export const decision = (title: string, result: string, steps: readonly Step[] = [], source?: Source): Decision => ({
  title,
  result,
  steps,
  ...(source ? { source } : {}),
});
