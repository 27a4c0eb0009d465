import type { Context } from "../model/installation.ts";
import type { FactOf, Facts } from "../model/values.ts";

export type Signature = "designed" | "installed" | "tested";

/** Who answers for a way, and when: the nearest one counts. */
export function handOf(
  hand: Signature,
  way: Facts<"way"> | undefined,
  context: Context,
): FactOf<"way", Signature> | undefined {
  return way?.one(hand) ?? context.board.facts.one(hand) ?? context.installation.facts.one(hand);
}
