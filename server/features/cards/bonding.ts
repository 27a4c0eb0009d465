/** Supplementary bonding: how thick it has to be, and what it may read. */
import { type Supplementary, supplementaryLimit } from "../../boards/supplementary.ts";
import { supplementaryBonding } from "../../calc/protective-size.ts";
import { studyWay } from "../../circuit/way.ts";
import type { BoardInPlace } from "../../model/installation.ts";
import { exact } from "../../model/values.ts";
import { type Card, card, limitRow, row } from "./card.ts";

export function supplementaryCard({ board, context }: BoardInPlace, fact: Supplementary): Card {
  const { shielded, size, continuity } = fact.args;
  const least = supplementaryBonding(shielded !== undefined);
  const studies = board.ways.map((way) => studyWay(way, context));
  const found = supplementaryLimit(fact, studies);
  const limit = "limit" in found ? found.limit : undefined;
  const short = size && size.value < least.value ? ", which this is not" : "";
  return card(
    [
      row("at least", `${least.value} mm²${short}`),
      limitRow("R at most, 50 V / Ia", limit, { value: exact(continuity) }),
      row("R at most", "missing" in found ? `not calculated, ${found.missing}` : undefined),
    ],
    least,
    limit,
  );
}
