import { word as firstWord, letter } from "../../grammar/tokens.ts";
import { containers, structural } from "../../grammar/vocabulary.ts";

/**
 * A stretch of whole lines that is read on its own. The texts of a file's segments, one after another, are the file.
 * Nothing in a segment knows where in the file it stands, so a line added above does not make it new.
 */
export interface Segment {
  /** `open`/`close`: the first and last line of an installation or board. `block`: a way, a supply, an instrument. */
  readonly kind: "open" | "close" | "block" | "lines";
  /** First word of an `open` or `block` segment. */
  readonly word: string;
  readonly text: string;
  /** How many line ends the text has. */
  readonly breaks: number;
  readonly fault?: "unclosed" | "extra-close";
}

/** What dividing needs to know of a line. Positions are in the whole text. */
interface Line {
  readonly start: number;
  readonly end: number;
  /** First word, where it is one that dividing asks for. */
  readonly word: string;
  /** Braces opened minus closed, outside texts and comments. */
  readonly net: number;
  readonly closesFirst: boolean;
  readonly indent: number;
}

/**
 * Divides a file by its lines. A brace that is lost or too many is held to its block: a line that starts with a word
 * that can only begin a new part ends whatever is open; and only where the braces of installations and boards do not
 * add up is the indentation taken as a hint of what was meant.
 */
export function split(text: string): Segment[] {
  const lines = linesOf(text);
  const plain = divide(text, lines, false);
  return plain.some((segment) => segment.fault && segment.kind !== "block") ? divide(text, lines, true) : plain;
}

function divide(text: string, lines: readonly Line[], useIndent: boolean): Segment[] {
  const out: Draft[] = [];
  const stack: Draft[] = [];
  let leaf: Draft | undefined;
  let depth = 0;

  const add = (kind: Segment["kind"], line: Line): Draft => {
    const word = kind === "open" || kind === "block" ? line.word : "";
    const draft: Draft = { kind, word, start: line.start, end: line.end, indent: line.indent, lines: 1 };
    out.push(draft);
    return draft;
  };
  const extend = (draft: Draft, line: Line): void => {
    draft.end = line.end;
    draft.lines++;
  };
  const closeContainer = (line: Line): void => {
    if (useIndent && stack.length > 0 && line.indent > (stack.at(-1)?.indent ?? 0)) {
      add("close", line).fault = "extra-close";
      return;
    }
    while (useIndent && stack.length > 1 && line.indent < (stack.at(-1)?.indent ?? 0)) drop(stack);
    const draft = add("close", line);
    if (!stack.pop()) draft.fault = "extra-close";
  };

  for (const line of lines) {
    if (leaf) {
      const ended = structural.has(line.word) || (useIndent && line.closesFirst && line.indent < leaf.indent);
      if (!ended) {
        extend(leaf, line);
        depth += line.net;
        if (depth <= 0) leaf = undefined;
        continue;
      }
      leaf.fault = "unclosed";
      leaf = undefined;
    }
    if (line.closesFirst && line.net < 0) closeContainer(line);
    else if (containers.has(line.word) && line.net > 0) {
      while (stack.length > 0 && !mayHold(stack.at(-1)?.word ?? "", line.word)) drop(stack);
      stack.push(add("open", line));
    } else if (line.net > 0 || (structural.has(line.word) && !inlineStructureWords.has(line.word))) {
      if (line.word === "supply") while (stack.length > 0 && stack.at(-1)?.word !== "installation") drop(stack);
      const draft = add("block", line);
      depth = line.net;
      if (depth > 0) leaf = draft;
    } else {
      const last = out.at(-1);
      if (last?.kind === "lines") extend(last, line);
      else add("lines", line);
    }
  }
  if (leaf) leaf.fault = "unclosed";
  while (stack.length > 0) drop(stack);
  return out.map((draft) => finish(text, draft));
}

/** Structural words whose line stands among the plain lines. */
const inlineStructureWords: ReadonlySet<string> = new Set(["wayfile", "use", "cable-type"]);

const mayHold = (outer: string, inner: string): boolean => outer === "installation" && inner === "board";

interface Draft {
  readonly kind: Segment["kind"];
  readonly word: string;
  readonly start: number;
  readonly indent: number;
  end: number;
  lines: number;
  fault?: Segment["fault"];
}

function drop(stack: Draft[]): void {
  const draft = stack.pop();
  if (draft) draft.fault = "unclosed";
}

function finish(whole: string, draft: Draft): Segment {
  const text = whole.slice(draft.start, draft.end);
  const last = text.charCodeAt(text.length - 1);
  return {
    kind: draft.kind,
    word: draft.kind === "block" ? draft.word || (firstWord.exec(text)?.[0] ?? "") : draft.word,
    text,
    breaks: draft.lines - (last === 10 || last === 13 ? 0 : 1),
    ...(draft.fault ? { fault: draft.fault } : {}),
  };
}

/** Most lines have no brace and no word that dividing asks for: they are passed over without a look inside. */
function linesOf(text: string): Line[] {
  const lines: Line[] = [];
  const braces = nextOf(text, "{", "}");
  const returns = text.includes("\r");
  let start = 0;
  do {
    const end = returns ? lineEndAfter(text, start) : text.indexOf("\n", start) + 1 || text.length;
    let first = start;
    while (isBlank(text.charCodeAt(first))) first++;
    const { net } = braces(first) < end && !isConflict(text, start) ? count(text, first, end) : none;
    const word = wordAt(text, first);
    lines.push({ start, end, word, net, closesFirst: text.charCodeAt(first) === 125, indent: first - start });
    start = end;
  } while (start < text.length);
  return lines;
}

const none = { net: 0 };

/** Tells where the next of some signs stands, searching each stretch of the text once. */
function nextOf(text: string, ...signs: string[]): (from: number) => number {
  const next = signs.map(() => -1);
  return (from) => {
    let least = Number.POSITIVE_INFINITY;
    for (let index = 0; index < signs.length; index++) {
      if ((next[index] ?? 0) < from) {
        const found = text.indexOf(signs[index] ?? "", from);
        next[index] = found < 0 ? Number.POSITIVE_INFINITY : found;
      }
      least = Math.min(least, next[index] ?? least);
    }
    return least;
  };
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
function count(text: string, from: number, end: number): { net: number } {
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
  return { net };
}

/** The blanks of the lexer: every white space that ends no line. */
const isBlank = (code: number): boolean =>
  code === 32 || code === 9 || code === 11 || code === 12 || (code > 127 && /\s/.test(String.fromCharCode(code)));

/** A merge conflict marker takes its whole line, whatever the name of the branch. */
function isConflict(text: string, start: number): boolean {
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
