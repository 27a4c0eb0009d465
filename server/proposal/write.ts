import { formatDocument } from "../format/format.ts";
import type { Document } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import { applyEdits, type TextEdit } from "../text/lines.ts";

/**
 * The text of a segment after edits, laid out in the one style. The rest of the file stays as it is, laid out or not;
 * and where the layout would not be safe, so does the segment but for the edits.
 */
export function written({ segments }: Document, segment: Segment, edits: readonly TextEdit[]): string {
  if (edits.length === 0) return segment.text;
  const text = applyEdits(segment.text, withBreaks(edits, segment.text));
  const changed = segments.map((one) => (one === segment ? { ...one, text } : one));
  const index = segments.indexOf(segment);
  const offset = changed.slice(0, Math.max(index, 0)).reduce((sum, one) => sum + one.text.length, 0);
  const layout = formatDocument({ segments: changed })?.edits ?? [];
  const own = layout
    .filter(({ start, end }) => start >= offset && end <= offset + text.length)
    // An edit that ends where the segment begins belongs to the one before.
    .filter(({ start, end }) => end > offset || start > offset || (start === offset && end === offset && offset === 0))
    .map((edit) => ({ ...edit, start: edit.start - offset, end: edit.end - offset }));
  return applyEdits(text, own);
}

/** Lines that are added end as those of the file do. */
function withBreaks(edits: readonly TextEdit[], text: string): readonly TextEdit[] {
  if (!text.includes("\r\n")) return edits;
  return edits.map((edit) => ({ ...edit, text: edit.text.replace(/\r?\n/g, "\r\n") }));
}
