/** What the reading under the cursor may be out by, where its instrument says so. */

import { allWrittenAt } from "../../model/fact-values.ts";
import { readingsIn, uncertaintyOf } from "../../readings/uncertainty.ts";
import type { Snapshot } from "../../workspace/workspace.ts";
import { type CursorContext, installationAt } from "../cursor.ts";
import { type Card, card, emptyCard, row } from "./card.ts";

export function withUncertainty(
  own: Card | undefined,
  snapshot: Snapshot,
  { around, outer, fact, segment }: CursorContext,
  offset: number,
): Card | undefined {
  if (!fact) return own;
  const reading = readingsIn(around.kind, fact).find(
    ({ quantity }) => offset >= quantity.start && offset <= quantity.end,
  );
  const names = installationAt(snapshot, segment)?.names;
  if (!reading || !names) return own;
  const header = outer[0]?.facts.list.find(({ start }) => start === around.header?.start);
  const instruments = allWrittenAt(header, "with").map(({ value }) => value);
  const uncertainty = uncertaintyOf(names, instruments, reading.kind, reading.quantity);
  if (!uncertainty) return own;
  const { rows, steps, sources } = own ?? emptyCard;
  const added = card([row(`uncertainty of ${uncertainty.instrument}`, uncertainty.shown)], uncertainty);
  // The limit's source is not made weaker by what is stated of a meter.
  return {
    rows: [...rows, ...added.rows],
    steps: [...steps, ...added.steps],
    sources: sources.length > 0 ? sources : added.sources,
  };
}
