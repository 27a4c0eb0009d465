/**
 * Documents beyond the size that is read of a file. An editor may open one: its edits are kept, so that it is a schedule
 * again once it is shorter, but it is not divided into lines and blocks, which would take seconds for every character.
 */
import type { Finding } from "../rules/frame/rule.ts";
import { type Document, documentOf, type Edit, textOf } from "../syntax/document.ts";
import { applyEdit } from "../syntax/edit.ts";
import { ceiling, tooLarge } from "../text/decode.ts";
import { lineStarts, offsetOf } from "../text/lines.ts";

export const sizeOf = ({ segments }: Document): number => segments.reduce((sum, { text }) => sum + text.length, 0);

export const isLarge = (size: number): boolean => size > ceiling;

/** A text as a document, in one piece where it is too large. */
export const openText = (text: string): Document => (isLarge(text.length) ? inOnePiece(text) : documentOf(text));

const inOnePiece = (text: string): Document => ({
  segments: [{ kind: "lines", word: "", text, breaks: lineStarts(text).length - 1 }],
});

export function editText(document: Document, edit: Edit): Document {
  if (!isLarge(Math.max(sizeOf(document), edit.text.length))) return applyEdit(document, edit);
  if (!edit.range) return openText(edit.text);
  const text = textOf(document);
  const starts = lineStarts(text);
  const [from, to] = [edit.range.start, edit.range.end].map((place) => offsetOf(starts, text, place));
  return openText(text.slice(0, from) + edit.text + text.slice(to));
}

/** The one finding of such a file, at its top. */
export function largeFinding({ segments: [segment] }: Document, size: number): Finding[] {
  if (!segment) return [];
  const message = `This file is not checked: ${tooLarge(size)} Divide it, and name its parts with “use”.`;
  const spot = { segment, start: 0, end: 0 };
  return [{ check: "check/too-large", severity: "error", message, spot, related: [], fixes: [] }];
}
