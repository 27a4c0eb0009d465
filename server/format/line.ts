/** One line as it is left: its end, its units, and the column in which the lines above it have their values. */
import { type Document, textOf } from "../syntax/document.ts";
import { lineStarts, type TextEdit } from "../text/lines.ts";
import { formatDocument } from "./format.ts";

/** The edit of a line; none where it is in order. The lines round it stay as they are. */
export function formattedLine(document: Document, line: number): TextEdit[] {
  const text = textOf(document);
  const starts = lineStarts(text);
  const start = starts[line];
  if (start === undefined) return [];
  const lines = text.split(/\r\n|\n|\r/);
  const own = lines[line] ?? "";
  // A line that is nothing but its indentation is where somebody goes on to write.
  if (own.trim() === "") return [];
  const formatted = formatDocument(document)?.text.split(/\r\n|\n|\r/)[line];
  const spelt = formatted !== undefined && same(formatted, own) ? formatted : own.replace(/[ \t]+$/, "");
  const fresh = inColumn(spelt, own, lines[line - 1] ?? "");
  return fresh === own ? [] : [{ start, end: start + own.length, text: fresh }];
}

const parts = /^(\s*)([^\s"{}#]+)([ \t]+)([^\s{].*)$/;

/** With its value where the line above has its own, if there is room; else where the writer put it. */
function inColumn(line: string, own: string, above: string): string {
  const [, indent = "", word = "", , rest = ""] = parts.exec(line) ?? [];
  const [, before = "", other = "", gap = ""] = parts.exec(above) ?? [];
  if (word === "" || line.endsWith("{")) return line;
  const written = parts.exec(own)?.[3] ?? " ";
  const column = other.length + gap.length;
  const aligned = indent === before && gap.length > 1 && word.length + 2 <= column;
  return `${indent}${word}${aligned ? " ".repeat(column - word.length) : written}${rest}`;
}

/** Whether two lines differ in nothing but blanks, and how a unit is spelt. */
const same = (one: string, other: string): boolean => bare(one) === bare(other);
const bare = (line: string): string => line.replace(/\s+/g, "").replace(/²/g, "2").toLowerCase();
