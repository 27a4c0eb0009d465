import type { Fix } from "../model/problems.ts";
import type { Fact, Span } from "../model/values.ts";

/** Edits are in the segment of the finding, so these serve only where the fact stands in it too. */

/** Writes a value anew. */
export const replaced = (title: string, { start, end }: Span, text: string): Fix => ({
  title,
  edits: [{ start, end, text }],
  safe: false,
});

/** Adds arguments to the end of a statement without a block. */
export const appended = (title: string, fact: Fact, text: string): Fix => ({
  title,
  edits: [{ start: fact.end, end: fact.end, text: ` ${text}` }],
  safe: false,
});

/** Adds a statement on a line of its own below another, as far in as that one. */
export function lineAfter(title: string, fact: Fact, line: string): Fix {
  const { text } = fact.segment;
  const lineStart = text.lastIndexOf("\n", fact.start - 1) + 1;
  const indent = /^[ \t]*/.exec(text.slice(lineStart, fact.start))?.[0] ?? "";
  const breakAt = text.indexOf("\n", fact.end);
  const at = breakAt < 0 ? text.length : breakAt;
  return { title, edits: [{ start: at, end: at, text: `\n${indent}${line}` }], safe: false };
}

/** Takes a statement out with its line. */
export function lineRemoved(title: string, fact: Fact): Fix {
  const { text } = fact.segment;
  const start = text.lastIndexOf("\n", fact.start - 1) + 1;
  const breakAt = text.indexOf("\n", fact.end);
  return { title, edits: [{ start, end: breakAt < 0 ? text.length : breakAt + 1, text: "" }], safe: false };
}
