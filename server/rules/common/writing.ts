import { valuesOf } from "../../model/fact-values.ts";
import type { Fix } from "../../model/problems.ts";
import type { Fact, Span } from "../../model/values.ts";

/**
 * Fixes that write a line. What they write is a place to fill in or a choice among the words of the language; a result
 * that nobody has read is never written.
 */

/** Adds a line at the top of the block a statement opens. Nothing where the block's brace cannot be found. */
export function lineInBlock(header: Fact, line: string, title = `Add “${line}”`): Fix[] {
  const { text } = header.segment;
  const brace = text.indexOf("{", argumentsEnd(header));
  const indent = indentOf(header);
  if (brace < 0 || (header.inner && brace >= header.end)) return blockFor(header, line, title);
  const rest = text.slice(brace + 1).match(/^[^\r\n]*\r?\n/)?.[0] ?? "";
  const at = brace + 1 + rest.length;
  // A block on one line, or a file that ends with the brace, has no line below to stand on.
  if (rest.trim() !== "" && !rest.trim().startsWith("#")) {
    return [fix(title, brace + 1, brace + 1, `\n${indent}  ${line}\n${indent} `)];
  }
  if (rest === "") return [fix(title, text.length, text.length, `\n${indent}  ${line}\n`)];
  return [fix(title, at, at, `${indent}  ${line}\n`)];
}

/** A statement that may stand without a block, such as a way, gets one. */
function blockFor(header: Fact, line: string, title: string): Fix[] {
  if (!header.inner) return [];
  const indent = indentOf(header);
  return [fix(title, header.end, header.end, ` {\n${indent}  ${line}\n${indent}}`)];
}

/** Adds words at the end of a statement's own line. */
export function wordsAfter(fact: Fact, words: string, title = `Add “${words}”`): Fix[] {
  const end = argumentsEnd(fact);
  return [fix(title, end, end, ` ${words}`)];
}

/** Adds a statement on a line of its own below another, as far in as that one. */
export function lineAfter(fact: Fact, line: string, title = `Add “${line}”`): Fix {
  const { text } = fact.segment;
  const breakAt = text.slice(fact.end).search(/\r?\n/);
  const at = breakAt < 0 ? text.length : fact.end + breakAt;
  return fix(title, at, at, `\n${indentOf(fact)}${line}`);
}

/** Puts another text in the place of a value. */
export const inPlaceOf = ({ start, end }: Span, text: string, title = `Write ${text}`): Fix =>
  fix(title, start, end, text);

/**
 * Corrects a reading in the words of whoever misread it: the new figure, with what stood there and why it does not. Only
 * for what the person can say of their own reading; nothing here knows what the meter showed.
 */
export function misread(fact: Fact, value: Span, text: string, why: string, title?: string): Fix {
  const before = fact.segment.text.slice(value.start, value.end);
  const words = title ?? `I misread it: ${text}, not ${before}`;
  return { ...fix(words, value.start, value.end, `${text} was ${before} "${why}"`), misread: true };
}

/** A fix of a slip of the pen: what is written cannot be. */
export const slipOf = (one: Fix): Fix => ({ ...one, slip: true });

/** Takes a statement's line out. */
export function withoutLine(fact: Fact, title: string): Fix {
  const { text } = fact.segment;
  const start = text.lastIndexOf("\n", fact.start - 1) + 1;
  const breakAt = text.indexOf("\n", fact.end);
  return fix(title, start, breakAt < 0 ? text.length : breakAt + 1, "");
}

const fix = (title: string, start: number, end: number, text: string): Fix => ({
  title,
  edits: [{ start, end, text }],
  safe: false,
});

function indentOf({ segment, start }: Fact): string {
  const line = segment.text.slice(segment.text.lastIndexOf("\n", start - 1) + 1, start);
  return /^[ \t]*$/.test(line) ? line : "";
}

/** Where the last argument of a statement ends: a brace in a title is not the block's. */
function argumentsEnd(fact: Fact): number {
  return Math.max(fact.wordEnd, ...valuesOf(fact).map((value) => value.end));
}
