import type { Fix } from "../model/problems.ts";
import type { Fact, Span } from "../model/values.ts";
import { inPlaceOf, lineAfter as lineBelow, withoutLine } from "./writing.ts";

/** The same fixes as in writing.ts, with the title first. */

export const replaced = (title: string, span: Span, text: string): Fix => inPlaceOf(span, text, title);

export const appended = (title: string, fact: Fact, text: string): Fix => ({
  title,
  edits: [{ start: fact.end, end: fact.end, text: ` ${text}` }],
  safe: false,
});

export const lineAfter = (title: string, fact: Fact, line: string): Fix => lineBelow(fact, line, title);

export const lineRemoved = (title: string, fact: Fact): Fix => withoutLine(fact, title);
