/** A file's lines as far as dividing needs to know them. */
import { letter } from "../../grammar/tokens.ts";
import { containers, structural } from "../../grammar/vocabulary.ts";

/** What dividing needs to know of a line. Positions are in the whole text. */
export interface Line {
  readonly start: number;
  readonly end: number;
  /** First word, where it is one that dividing asks for. */
  readonly word: string;
  /** Braces opened minus closed, outside texts and comments. */
  readonly net: number;
  readonly closesFirst: boolean;
  readonly indent: number;
}

/** Most lines have no brace and no word that dividing asks for: they are passed over without a look inside. */
export function linesOf(text: string): Line[] {
  const lines: Line[] = [];
  // Where the next of each stands: each stretch of the text is searched once.
  let opens = -1;
  let closes = -1;
  const returns = text.includes("\r");
  let start = 0;
  do {
    const end = returns ? lineEndAfter(text, start) : text.indexOf("\n", start) + 1 || text.length;
    let first = start;
    while (isBlank(text.charCodeAt(first))) first++;
    if (opens < first) opens = placeAfter(text, "{", first);
    if (closes < first) closes = placeAfter(text, "}", first);
    const net = (opens < end || closes < end) && !isConflict(text, start) ? count(text, first, end) : 0;
    const word = wordAt(text, first);
    lines.push({ start, end, word, net, closesFirst: text.charCodeAt(first) === 125, indent: first - start });
    start = end;
  } while (start < text.length);
  return lines;
}

function placeAfter(text: string, sign: string, from: number): number {
  const found = text.indexOf(sign, from);
  return found < 0 ? Number.POSITIVE_INFINITY : found;
}

function lineEndAfter(text: string, start: number): number {
  for (let at = start; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10) return at + 1;
    if (code === 13) return text.charCodeAt(at + 1) === 10 ? at + 2 : at + 1;
  }
  return text.length;
}

const structureWords: ReadonlySet<string> = new Set([...structural, ...containers]);
const initials: ReadonlySet<number> = new Set([...structureWords].map((word) => word.charCodeAt(0)));

/** The word at a place if it is one that dividing asks for, or else the empty string where a block has no such word. */
function wordAt(text: string, at: number): string {
  if (!initials.has(text.charCodeAt(at))) return "";
  let end = at + 1;
  while (isWordSign(text.charCodeAt(end))) end++;
  const word = text.slice(at, end);
  return structureWords.has(word) ? word : "";
}

const isWordSign = (code: number): boolean =>
  (code >= 97 && code <= 122) ||
  (code >= 65 && code <= 90) ||
  (code >= 48 && code <= 57) ||
  code === 95 ||
  code === 45 ||
  code === 43 ||
  code === 47 ||
  code === 46 ||
  (code > 127 && letters.test(String.fromCharCode(code)));

const letters = new RegExp(`[${letter}]`, "u");

/** Agrees with the lexer on what is a text and what is a comment; a text that is not closed ends at a brace. */
function count(text: string, from: number, end: number): number {
  let net = 0;
  let openText = false;
  for (let at = from; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code === 123 || code === 125) {
      net += code === 123 ? 1 : -1;
      openText = false;
    } else if (code === 34) {
      const close = closingQuote(text, at);
      openText = close < 0;
      if (!openText) at = close;
    } else if (code === 35 && !openText) break;
  }
  return net;
}

/** The blanks of the lexer: every white space that ends no line. */
const isBlank = (code: number): boolean =>
  code === 32 || code === 9 || code === 11 || code === 12 || (code > 127 && /\s/.test(String.fromCharCode(code)));

/** A merge conflict marker takes its whole line, whatever the name of the branch. */
export function isConflict(text: string, start: number): boolean {
  const code = text.charCodeAt(start);
  if (code !== 60 && code !== 61 && code !== 62 && code !== 124) return false;
  for (let at = start + 1; at < start + 7; at++) if (text.charCodeAt(at) !== code) return false;
  return true;
}

function closingQuote(text: string, open: number): number {
  for (let at = open + 1; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 34) return at;
    if (code === 10 || code === 13) return -1;
    if (code !== 92) continue;
    const next = text.charCodeAt(at + 1);
    if (next === 10 || next === 13) return -1;
    at++;
  }
  return -1;
}
