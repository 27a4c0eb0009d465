/** Every feature of an editor at one place, and over a whole file: none may fall over, or point outside the text. */
import assert from "node:assert/strict";
import { actionsFor, findingsTouching } from "../../server/features/actions.ts";
import { complete } from "../../server/features/completion.ts";
import { type Cursor, withEnclosingBlock } from "../../server/features/cursor.ts";
import { folds } from "../../server/features/folding.ts";
import { hover } from "../../server/features/hover.ts";
import { links } from "../../server/features/links.ts";
import { definitions, nameAt, occurrences } from "../../server/features/names.ts";
import { rename } from "../../server/features/rename.ts";
import { selections } from "../../server/features/selection.ts";
import { signatureAt } from "../../server/features/signature.ts";
import { symbols } from "../../server/features/symbols.ts";
import { tokensIn } from "../../server/features/tokens.ts";
import { resolveUri } from "../../server/workspace/uri.ts";
import type { Snapshot } from "../../server/workspace/workspace.ts";

export function everyFeature(snapshot: Snapshot, cursor: Cursor): void {
  const shown = hover(snapshot, cursor);
  if (shown) isInside(shown.spot);
  for (const { spot } of complete(snapshot, cursor)) isInside(spot);
  signatureAt(snapshot, cursor);
  const named = nameAt(snapshot, cursor);
  if (named) {
    definitions(snapshot, named);
    occurrences(snapshot, named);
    rename(snapshot, cursor, "other");
  }
  let inner = { start: cursor.offset, end: cursor.offset };
  for (const span of selections(snapshot, cursor)) {
    assert.ok(span.start <= inner.start || inner.start === inner.end, "a selection shrinks");
    inner = span;
  }
}

export function wholeFile(snapshot: Snapshot): void {
  symbols(snapshot);
  for (const { first, last } of folds(snapshot)) assert.ok(last > first, "a fold ends before it begins");
  links(snapshot, resolveUri);
  for (const { segment, within } of withEnclosingBlock(snapshot.file.document.segments)) {
    let at = 0;
    for (const { start, length } of tokensIn(segment, within)) {
      assert.ok(start >= at, "colours overlap");
      at = start + length;
    }
    assert.ok(at <= segment.text.length, "a colour lies outside the text");
  }
  const found = findingsTouching(snapshot, () => true);
  for (const { edits, segment } of actionsFor(snapshot, found)) {
    for (const { start, end } of edits) isInside({ segment, start, end });
  }
}

export function isInside({ segment, start, end }: { segment: { text: string }; start: number; end: number }): void {
  assert.ok(0 <= start && start <= end && end <= segment.text.length, `${start} to ${end} lies outside the text`);
}

/** The cursor at an offset of a file's text. */
export function cursorAt(snapshot: Snapshot, text: string, offset: number): Cursor | undefined {
  const before = text.slice(0, offset).split("\n");
  return snapshot.positions.at({ line: before.length - 1, character: before.at(-1)?.length ?? 0 });
}
