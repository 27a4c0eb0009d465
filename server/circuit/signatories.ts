import type { Context } from "../model/installation.ts";
import type { FactOf, Facts } from "../model/values.ts";

export type SignatureWord = "designed" | "installed" | "tested";

/** Who signed for a way, and when: the nearest signature counts. */
export function signatoryOf(
  signed: SignatureWord,
  way: Facts<"way"> | undefined,
  context: Context,
): FactOf<"way", SignatureWord> | undefined {
  return way?.one(signed) ?? context.board.facts.one(signed) ?? context.installation.facts.one(signed);
}
