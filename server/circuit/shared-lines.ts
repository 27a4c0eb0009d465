/**
 * A way may have lines from its circuit type, which stand elsewhere: a place within one of them is no place in the way.
 * An edit of the way must not be made from one.
 */

import { Memo } from "../memo/memo.ts";
import { valuesOf } from "../model/fact-values.ts";
import type { Way } from "../model/file.ts";
import type { Fact } from "../model/values.ts";
import type { TextEdit } from "../text/lines.ts";

const kept = new Memo<Way, ReadonlySet<number>>();

/** Whether an edit can only mean the way's own text. One that could mean either is taken for the other. */
export function isOwnEdit(way: Way, { start, end, text }: TextEdit): boolean {
  if (!way.type) return true;
  // A whole line that is added stands below the way's own first line.
  if (start === end && text.endsWith("\n")) return true;
  const shared = kept.get(way) ?? placesShared(way);
  kept.set(way, shared);
  return !shared.has(start) && !shared.has(end);
}

const placesShared = ({ facts, segment }: Way): ReadonlySet<number> =>
  new Set(facts.list.filter((fact) => fact.segment !== segment).flatMap(placesOf));

/** Where a fix could take hold of a line: its words, and the ends of the line they stand on. */
function placesOf(fact: Fact): number[] {
  const { text } = fact.segment;
  const lineStart = text.lastIndexOf("\n", fact.start - 1) + 1;
  const lineEnd = text.indexOf("\n", fact.end);
  const spans = valuesOf(fact).flatMap(({ start, end }) => [start, end]);
  return [fact.start, fact.wordEnd, fact.end, lineStart, lineEnd, lineEnd + 1, ...spans];
}
