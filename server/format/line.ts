/** One line as it is left: what the formatter would make of it, and nothing of the lines round it. */
import { parse } from "../../grammar/parser.ts";
import { blockKinds, rowOf } from "../../grammar/vocabulary.ts";
import { bindArguments } from "../model/arguments.ts";
import { type Document, textOf } from "../syntax/document.ts";
import { lineStarts, type TextEdit } from "../text/lines.ts";
import { inColumn } from "./column.ts";
import { formatDocument } from "./format.ts";
import { spellLine } from "./spelling.ts";

/**
 * The edit of a line; none where it is in order. The lines round it stay as they are.
 * @param indents whether the editor indents as the formatter does: if not, the line stands where its neighbours do
 */
export function formattedLine(document: Document, line: number, indents = true): TextEdit[] {
  const text = textOf(document);
  const starts = lineStarts(text);
  const start = starts[line];
  if (start === undefined) return [];
  const own = linesOf(text)[line] ?? "";
  // A line that is nothing but its indentation is where somebody goes on to write.
  if (own.trim() === "") return [];
  const formatted = formatDocument(document);
  const laid = (formatted && found(linesOf(formatted.text), own, line)) ?? alone(own) ?? own.replace(/[ \t]+$/, "");
  const fresh = indents ? laid : laid.replace(/^[ \t]*/, /^[ \t]*/.exec(own)?.[0] ?? "");
  return fresh === own ? [] : [{ start, end: start + own.length, text: fresh }];
}

const linesOf = (text: string): string[] => text.split(/\r\n|\n|\r/);

/** The line in the formatted text. It may have changed places there; of lines that say the same, the nearest. */
function found(lines: readonly string[], own: string, line: number): string | undefined {
  const alike = lines.flatMap((text, at) => (same(text, own) ? [{ text, away: Math.abs(at - line) }] : []));
  const [nearest] = alike.toSorted((one, other) => one.away - other.away);
  return nearest?.text === own ? undefined : nearest?.text;
}

/** A line of a block that is not formatted, since it is not closed yet: by itself, where only one reading of it fits. */
function alone(own: string): string | undefined {
  const [, indent = "", rest = ""] = /^([ \t]*)(.*?)[ \t]*$/.exec(own) ?? [];
  const { statements, faults, comments } = parse(rest);
  const [statement, ...others] = statements;
  if (!statement || statement.block || others.length + faults.length + comments.length > 0) return undefined;
  const { word, args } = statement;
  const readings = insideFile.flatMap((kind) => {
    const row = rowOf(kind, word.image);
    if (!row || row.opens || bindArguments(word, row, args).problems.length > 0) return [];
    return [inColumn(spellLine(word, args, row, kind))];
  });
  const [only, ...different] = new Set(readings);
  return only !== undefined && different.length === 0 ? indent + only : undefined;
}

const insideFile = blockKinds.filter((kind) => kind !== "file");

/** Whether two lines differ in nothing but blanks, and how a unit is spelt. */
const same = (one: string, other: string): boolean => bare(one) === bare(other);
const bare = (line: string): string => line.replace(/\s+/g, "").replace(/²/g, "2").toLowerCase();
