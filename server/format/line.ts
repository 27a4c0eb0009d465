/** One line in the one style, as it is left: the lines round it stay as they are. */
import { type Document, textOf } from "../syntax/document.ts";
import { lineStarts, type TextEdit } from "../text/lines.ts";
import { formatDocument } from "./format.ts";

/** The edit of a line; none where it is in order, and no more than its end where the rest of its block is not whole yet. */
export function formattedLine(document: Document, line: number): TextEdit[] {
  const text = textOf(document);
  const starts = lineStarts(text);
  const start = starts[line];
  if (start === undefined) return [];
  const own = withoutBreak(text.slice(start, starts[line + 1] ?? text.length));
  // A line that is nothing but its indentation is where somebody goes on to write.
  if (own.trim() === "") return [];
  const formatted = formatDocument(document)?.text.split(/\r\n|\n|\r/)[line];
  const fresh = formatted !== undefined && same(formatted, own) ? formatted : own.replace(/[ \t]+$/, "");
  return fresh === own ? [] : [{ start, end: start + own.length, text: fresh }];
}

const withoutBreak = (line: string): string => line.replace(/[\r\n]+$/, "");

/** Whether two lines differ in nothing but blanks, and how a unit is spelt. */
const same = (one: string, other: string): boolean => bare(one) === bare(other);
const bare = (line: string): string => line.replace(/\s+/g, "").replace(/²/g, "2").toLowerCase();
