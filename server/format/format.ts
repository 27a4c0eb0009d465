/**
 * One style, no options, and rather no change than a wrong one: a block with faults stays as it stands, and where the
 * result would say anything else than before, nothing is changed at all.
 */

import type { BlockKind } from "../../grammar/vocabulary.ts";
import { Memo } from "../memo/memo.ts";
import { type Document, documentOf, textOf } from "../syntax/document.ts";
import { type Segment, split } from "../syntax/split.ts";
import { applyEdits, type TextEdit } from "../text/lines.ts";
import { lineEdits } from "./edits.ts";
import { formatSegment, type Setting } from "./segment.ts";

interface Formatted {
  readonly text: string;
  /** One for each stretch of lines that changes. */
  readonly edits: readonly TextEdit[];
}

/** A text in the one style. Nothing where there is nothing to change, or where it is not safe to. */
export const format = (text: string): Formatted | undefined => formatDocument(documentOf(text));

/** As `format`, for a document that is divided already: only what changed since the last time is laid out anew. */
export function formatDocument(document: Document): Formatted | undefined {
  const { segments } = document;
  if (segments.some(({ kind, fault }) => fault && kind !== "block")) return undefined;
  const text = textOf(document);
  const lineEnd = ["\r\n", "\n", "\r"].find((end) => text.includes(end)) ?? "\n";
  const mark = text.startsWith("\ufeff") ? 1 : 0;
  const texts: string[] = [];
  const edits: TextEdit[] = [];
  let offset = 0;
  settings(segments).forEach((setting, index) => {
    const segment = segments[index] as Segment;
    const skip = index === 0 ? mark : 0;
    const before = segment.text.slice(skip);
    const lines = skip === 0 ? linesOf(segment, setting) : formatSegment({ ...segment, text: before }, setting);
    const isLast = index === segments.length - 1;
    const after = lines ? lines.map((line) => line + lineEnd).join("") : closed(before, isLast, lineEnd);
    if (after !== before) edits.push(...lineEdits(before, after, offset + skip));
    texts.push(segment.text.slice(0, skip) + after);
    offset += segment.text.length;
  });
  if (edits.length === 0) return undefined;
  const result = texts.join("");
  return sameDivision(segments, texts, split(result)) && applyEdits(text, edits) === result
    ? { text: result, edits }
    : undefined;
}

/** The last line ends as the others do. */
const closed = (text: string, isLast: boolean, lineEnd: string): string =>
  isLast && text !== "" && !/[\r\n]$/.test(text) ? text + lineEnd : text;

function settings(segments: readonly Segment[]): Setting[] {
  const open: BlockKind[] = [];
  return segments.map((segment, index) => {
    if (segment.kind === "close") open.pop();
    const setting: Setting = {
      within: open.at(-1) ?? "file",
      depth: open.length,
      blankFirst: index > 0 && segments[index - 1]?.kind !== "open",
      blankLast: index < segments.length - 1 && segments[index + 1]?.kind !== "close",
    };
    if (segment.kind === "open") open.push(segment.word as BlockKind);
    return setting;
  });
}

interface Kept {
  readonly key: string;
  readonly lines: string[] | undefined;
}

const kept = new Memo<Segment, Kept>();

function linesOf(segment: Segment, setting: Setting): string[] | undefined {
  const key = Object.values(setting).join();
  const before = kept.get(segment);
  if (before?.key === key) return before.lines;
  const lines = formatSegment(segment, setting);
  kept.set(segment, { key, lines });
  return lines;
}

/** The result is divided as it was, each part into what was made of it. */
function sameDivision(before: readonly Segment[], texts: readonly string[], after: readonly Segment[]): boolean {
  const wanted = before.map((segment, index) => ({ ...segment, text: texts[index] })).filter(({ text }) => text !== "");
  const found = after.filter(({ text }) => text !== "");
  return (
    wanted.length === found.length &&
    wanted.every(({ kind, word, fault, text }, index) => {
      const other = found[index];
      return other?.kind === kind && other.word === word && other.fault === fault && other.text === text;
    })
  );
}
