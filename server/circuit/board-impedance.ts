import type { Context } from "../model/installation.ts";
import { quantityOf } from "../model/values.ts";
import { type ExactReading, exactReading, testsOf } from "./supply.ts";

/** A figure for the board itself counts before the supply's; a board that is not at the origin has only its own. */
export function boardImpedance({
  board,
  supply,
}: Pick<Context, "board" | "supply">): (ExactReading & { readonly name: "Ze" | "Zdb" }) | undefined {
  const tested = testsOf<"boardLive">(board.facts.all("live")).map((test) => test.facts.one("Zdb"));
  const stated = [...tested, board.facts.one("Zdb")].find((fact) => fact !== undefined);
  const own = stated && exactReading({ value: stated.args.value, fact: stated });
  if (own) return { ...own, name: "Zdb" };
  // Off scale it is worse than any figure upstream, and nothing can be calculated from it.
  if (stated && quantityOf(stated.args.value)?.sign === ">") return undefined;
  if (board.facts.has("earthing")) return undefined;
  const Ze = supply?.one("Ze");
  const fedFromSupply = board.facts.one("fed-from")?.args.from.value === "supply";
  const origin = Ze && fedFromSupply ? exactReading({ value: Ze.args.value, fact: Ze }) : undefined;
  return origin && { ...origin, name: "Ze" };
}
