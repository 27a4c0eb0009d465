import type { Edition } from "../../server/tables/editions.ts";
import { editionOf } from "../../server/tables/editions.ts";
import type { Standing } from "../../server/tables/source.ts";

/** An edition that surely exists. */
export function edition(id: string): Edition {
  const found = editionOf(id);
  if (found === undefined) throw new Error(`no edition ${id}`);
  return found;
}

/** The edition the tables are printed for. */
export const recent = edition("BS 7671:2018+A2:2022");

/** Rank of a standing, weakest 0; −1 for none. */
export function standingOrder(standing: Standing | undefined): number {
  return ["memory", "practice", "computed", "quoted", "printed"].indexOf(standing ?? "");
}

/** Half a unit of the last decimal published: what rounding alone may cost. */
export function half(decimals: number): number {
  return 0.5 * 10 ** -decimals + 1e-9;
}
