/** The supply as it stands: of each reading the latest, whichever day's tests or plain line it is from. */

import { wordsRead } from "../../grammar/readings.ts";
import { rowOf } from "../../grammar/vocabulary.ts";
import { Memo } from "../memo/memo.ts";
import { inOrder } from "../text/order.ts";
import { wordAt } from "./fact-values.ts";
import { type Fact, Facts } from "./values.ts";

/** What is read again; all else of a supply is what it is. */
const readings = wordsRead("supplyLive").filter((word) => rowOf("supply", word));

const dayOf = (fact: Fact | undefined): string => wordAt(fact, "on") ?? "";

const kept = new Memo<Facts<"supply">, Facts<"supply">>();

/** The lines of a supply with every reading that was taken again in the place of the one before. */
export function supplyAsItStands(written: Facts<"supply">): Facts<"supply"> {
  if (!written.list.some(({ word, inner }) => word === "live" && inner)) return written;
  const before = kept.get(written);
  if (before) return before;
  const standing = joined(written);
  kept.set(written, standing);
  return standing;
}

function joined(written: Facts<"supply">): Facts<"supply"> {
  const plainDay = dayOf(written.list.find(({ word }) => word === "measured"));
  // Two of one day keep the order of the file, the later counting; the plain lines come before both.
  const days = written.list
    .filter(({ word, inner }) => word === "live" && inner && inner.list.length + inner.broken.length > 0)
    .reverse()
    .sort((a, b) => inOrder(dayOf(b), dayOf(a)));
  const later = days.filter((day) => dayOf(day) >= plainDay);
  const earlier = days.filter((day) => dayOf(day) < plainDay);
  const plain = new Set(written.list.map(({ word }) => word));
  const taken: Fact[] = [];
  const broken = new Set<string>(written.broken);
  const dropped = new Set<string>();
  for (const word of readings) {
    const standsPlain = plain.has(word) || written.broken.includes(word);
    const among = standsPlain ? later : [...later, ...earlier];
    const day = among.find(
      ({ inner }) => inner?.list.some((fact) => fact.word === word) || inner?.broken.includes(word),
    );
    if (!day) continue;
    dropped.add(word);
    const fact = day.inner?.list.find((one) => one.word === word);
    if (fact) taken.push(fact);
    if (fact) broken.delete(word);
    else broken.add(word);
  }
  const own = written.list.filter(({ word }) => !dropped.has(word));
  return new Facts("supply", [...own, ...taken], [...broken], written.struckOut);
}
