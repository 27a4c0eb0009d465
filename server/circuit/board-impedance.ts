import type { Context } from "../model/installation.ts";
import { exact, measured } from "../model/values.ts";
import { type NumberAt, numberAt, testsOf } from "./supply.ts";

/** A figure for the board itself counts before the supply's; a board that is not at the origin has only its own. */
export function boardImpedance({
  board,
  supply,
}: Pick<Context, "board" | "supply">): (NumberAt & { readonly name: "Ze" | "Zdb" }) | undefined {
  const tested = testsOf<"boardLive">(board.facts.all("live")).map((test) => test.facts.one("Zdb"));
  const stated = [...tested, board.facts.one("Zdb")].find((fact) => fact !== undefined);
  const own = stated && numberAt({ value: stated.args.value, fact: stated });
  if (own) return { ...own, name: "Zdb" };
  // Off scale it is worse than any figure upstream, and nothing can be reckoned from it.
  if (stated && measured(stated.args.value)?.sign === ">") return undefined;
  if (board.facts.has("earthing")) return undefined;
  const Ze = supply?.one("Ze");
  const fedFromSupply = board.facts.one("fed-from")?.args.from.value === "supply";
  const value = Ze && exact(Ze.args.value);
  if (!Ze || value === undefined || !fedFromSupply) return undefined;
  const decimals = "decimals" in Ze.args.value ? Ze.args.value.decimals : 2;
  return { value, decimals, fact: Ze, name: "Ze" };
}
