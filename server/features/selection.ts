import { endOf } from "../../grammar/lexer.ts";
import type { Span } from "../model/values.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { type Cursor, contextAt } from "./cursor.ts";

/** Stretches round the cursor within its segment, the narrowest first: word, statement, block, and so outward. */
export function selections(snapshot: Snapshot, cursor: Cursor): Span[] {
  const { token, statement, around, outer, segment } = contextAt(snapshot, cursor);
  const found: Span[] = [];
  if (token) found.push({ start: token.startOffset, end: endOf(token) });
  if (statement) found.push({ start: statement.start, end: endOf(statement.args.at(-1) ?? statement.word) });
  if (statement) found.push({ start: statement.start, end: statement.end });
  for (const { header } of [around, ...outer]) {
    if (!header) continue;
    const { block } = header;
    if (block?.close) found.push({ start: endOf(block.open), end: block.close.startOffset });
    found.push({ start: header.start, end: header.end });
  }
  found.push({ start: 0, end: segment.text.length });
  return found.filter((span, index) => {
    const within = found[index - 1];
    return !within || widens(within, span);
  });
}

const widens = (narrow: Span, wide: Span): boolean =>
  wide.start <= narrow.start && wide.end >= narrow.end && wide.end - wide.start > narrow.end - narrow.start;
