/** A file's lines as far as dividing needs to know them. */
import { letter } from "../../grammar/tokens.ts";
import { containers, opening, structural } from "../../grammar/vocabulary.ts";
import { holding } from "../text/lines.ts";

/** A text of which parts are cut out. */
export interface Cuttable {
  slice(start: number, end: number): string;
}

const closes = 256;
const solid = 512;
/** Its word opens a block, and it has no brace. */
const mayOpen = 1024;
/** A brace that opens is the first sign on it. */
const opensFirst = 2048;

/** Room for how many blocks open within one that is taken whole, below how many lines it has. */
const mostOpenings = 1 << 12;
const mostHeight = 1 << 18;

/**
 * Numbers side by side, line by line: a large file has a hundred thousand lines, and after a brace that is lost every one
 * is weighed again. A block that is divided the same whatever stands round it may be one row instead of its lines. Never
 * changed.
 */
export class Lines {
  /** Where each line begins and, behind the last, where the text ends. */
  readonly #starts: Int32Array;
  readonly #indents: Int32Array;
  readonly #nets: Int32Array;
  /** The place of its word among those that dividing asks for, and what else it is. */
  readonly #marks: Uint16Array;
  /** Of a whole block its lines and how many of them open one; of a line nothing. */
  readonly #wholes: Int32Array;
  /** Of a word whose brace stands on a line of its own below it: that line, and of that line the word's. */
  readonly #braces: ReadonlyMap<number, number>;
  readonly #heads: ReadonlyMap<number, number>;
  readonly count: number;

  constructor(
    starts: Int32Array,
    indents: Int32Array,
    nets: Int32Array,
    marks: Uint16Array,
    wholes: Int32Array = new Int32Array(marks.length),
  ) {
    this.#starts = starts;
    this.#indents = indents;
    this.#nets = nets;
    this.#marks = marks;
    this.#wholes = wholes;
    this.count = marks.length;
    this.#braces = lowBraces(marks);
    this.#heads = new Map([...this.#braces].map(([head, brace]) => [brace, head]));
  }

  start(line: number): number {
    return this.#starts[line] as number;
  }

  /** Behind what ends it. */
  end(line: number): number {
    return this.#starts[line + 1] as number;
  }

  indent(line: number): number {
    return this.#indents[line] as number;
  }

  /** Braces opened minus closed, outside texts and comments; a brace below its word counts where the word stands. */
  net(line: number): number {
    const own = this.#nets[line] as number;
    if (this.#braces.size === 0) return own;
    return this.#braces.has(line) ? 1 : own - (this.#heads.has(line) ? 1 : 0);
  }

  /** Its first word, where it is one that dividing asks for: that begins a part or, with its brace, a block. */
  word(line: number): string {
    const mark = this.#marks[line] as number;
    const isAsked = (mark & mayOpen) === 0 || (mark & 255) <= structureWords.size || this.#braces.has(line);
    return isAsked ? (words[mark & 255] as string) : "";
  }

  /** The line that the brace of a line's word stands on, where that is a line of its own below. */
  braceOf(line: number): number | undefined {
    return this.#braces.get(line);
  }

  /** Whether a brace that opens is the first sign of any line. */
  get hasLowBraces(): boolean {
    return this.#marks.some((mark) => (mark & opensFirst) !== 0);
  }

  mayOpen(line: number): boolean {
    return ((this.#marks[line] as number) & mayOpen) !== 0;
  }

  opensFirst(line: number): boolean {
    return ((this.#marks[line] as number) & opensFirst) !== 0;
  }

  closesFirst(line: number): boolean {
    return ((this.#marks[line] as number) & closes) !== 0;
  }

  /** Neither blank nor a comment nor the mark of a conflict, nor the brace of a word above. */
  isSolid(line: number): boolean {
    return ((this.#marks[line] as number) & solid) !== 0 && !this.#heads.has(line);
  }

  /** Whether it is a whole block. */
  isWhole(line: number): boolean {
    return this.#wholes[line] !== 0;
  }

  /** How many lines it is. */
  height(line: number): number {
    return this.isWhole(line) ? Math.floor((this.#wholes[line] as number) / mostOpenings) : 1;
  }

  /** How many lines of a whole block open one that has something in it. */
  openings(line: number): number {
    return (this.#wholes[line] as number) % mostOpenings;
  }

  /** All lines that are. */
  solid(): Int32Array {
    const found = new Int32Array(this.count);
    let length = 0;
    for (let line = 0; line < this.count; line++) if (this.isSolid(line)) found[length++] = line;
    return found.subarray(0, length);
  }

  /** The line that an offset is in; of the text's end, the last. */
  at(offset: number): number {
    return holding(this.#starts, this.count, offset);
  }

  /** With the lines of a text in the place of some. */
  replaced(from: number, until: number, text: string): Lines {
    if (text === "" && from === 0 && until === this.count) return linesOf("");
    return this.with(from, until, text === "" ? none : linesOf(text));
  }

  /** With other rows in the place of some. */
  with(from: number, until: number, fresh: Lines): Lines {
    const [before, after] = [this.start(from), this.start(until)];
    const grown = fresh.start(fresh.count) - (after - before);
    const starts = joined(Int32Array, this.#starts, from, until, fresh.#starts.subarray(0, fresh.count));
    for (let line = from; line < from + fresh.count; line++) starts[line] = (starts[line] as number) + before;
    for (let line = from + fresh.count; line < starts.length; line++) starts[line] = (starts[line] as number) + grown;
    return new Lines(
      starts,
      joined(Int32Array, this.#indents, from, until, fresh.#indents),
      joined(Int32Array, this.#nets, from, until, fresh.#nets),
      joined(Uint16Array, this.#marks, from, until, fresh.#marks),
      joined(Int32Array, this.#wholes, from, until, fresh.#wholes),
    );
  }

  /**
   * Stretches of so many lines each, one behind another: `openingsOf` gives of a stretch that is taken whole how many of
   * its lines open a block, and such a stretch becomes one row.
   */
  taken(
    heights: readonly number[],
    openingsOf: (lines: Lines, from: number, until: number) => number | undefined,
  ): Lines {
    const starts: number[] = [];
    const rows: number[] = [];
    const wholes: number[] = [];
    let from = 0;
    for (const height of heights) {
      const until = from + height;
      const openings = height < mostHeight ? openingsOf(this, from, until) : undefined;
      const isWhole = openings !== undefined && openings < mostOpenings;
      for (let line = from; line < (isWhole ? from + 1 : until); line++) {
        starts.push(this.start(line));
        rows.push(line);
        wholes.push(isWhole ? height * mostOpenings + openings : 0);
      }
      from = until;
    }
    starts.push(this.start(this.count));
    return new Lines(
      Int32Array.from(starts),
      Int32Array.from(rows, (line) => this.indent(line)),
      Int32Array.from(rows, (line) => this.#nets[line] as number),
      Uint16Array.from(rows, (line) => this.#marks[line] as number),
      Int32Array.from(wholes),
    );
  }
}

function joined<T extends Int32Array | Uint16Array>(
  kind: new (length: number) => T,
  old: T,
  from: number,
  until: number,
  fresh: T,
): T {
  const all = new kind(old.length - (until - from) + fresh.length);
  all.set(old.subarray(0, from));
  all.set(fresh, from);
  all.set(old.subarray(until), from + fresh.length);
  return all;
}

const none = new Lines(new Int32Array(1), new Int32Array(0), new Int32Array(0), new Uint16Array(0));

/** Most lines have no brace and no word that dividing asks for: they are passed over without a look inside. */
export function linesOf(text: string): Lines {
  const endAfter = text.includes("\r") ? lineEndAfter : feedAfter;
  const count = lineCount(text, endAfter);
  const starts = new Int32Array(count + 1);
  const indents = new Int32Array(count);
  const nets = new Int32Array(count);
  const marks = new Uint16Array(count);
  // Where the next of each stands: each stretch of the text is searched once.
  let nextOpen = -1;
  let nextClose = -1;
  let start = 0;
  for (let line = 0; line < count; line++) {
    const end = endAfter(text, start);
    let first = start;
    while (isBlank(text.charCodeAt(first))) first++;
    const sign = text.charCodeAt(first);
    const conflict = isConflict(text, start);
    if (nextOpen < first) nextOpen = placeAfter(text, "{", first);
    if (nextClose < first) nextClose = placeAfter(text, "}", first);
    const net = (nextOpen < end || nextClose < end) && !conflict ? netOf(text, first, end) : 0;
    starts[line] = start;
    indents[line] = first - start;
    nets[line] = net;
    const isOpened = nextOpen < end && !conflict;
    const word = initials.has(sign) ? wordAt(text, first) : 0;
    const isAsked = net > 0 || word <= structureWords.size;
    marks[line] =
      (isAsked || !isOpened ? word : 0) |
      (!isOpened && net === 0 && canOpen[word] ? mayOpen : 0) |
      (sign === 123 && net === 1 ? opensFirst : 0) |
      (sign === 125 ? closes : 0) |
      (first < end && !conflict && isSolidSign(sign) ? solid : 0);
    start = end;
  }
  starts[count] = text.length;
  return new Lines(starts, indents, nets, marks);
}

/** Lines of a text: an end of line at its end begins no other. */
function lineCount(text: string, endAfter: typeof lineEndAfter): number {
  let count = 0;
  for (let at = 0; at < text.length; at = endAfter(text, at)) count++;
  return Math.max(count, 1);
}

/** Of words that open a block, and have it on a line of its own below: the line of each, and that of its brace. */
function lowBraces(marks: Uint16Array): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  let head = -1;
  for (let line = 0; line < marks.length; line++) {
    const mark = marks[line] as number;
    if (head >= 0 && (mark & opensFirst) !== 0) found.set(head, line);
    if ((mark & solid) !== 0) head = (mark & mayOpen) === 0 ? -1 : line;
  }
  return found;
}

/** Neither the end of a line nor the beginning of a comment. */
const isSolidSign = (code: number): boolean => code !== 10 && code !== 13 && code !== 35;

function placeAfter(text: string, sign: string, from: number): number {
  const found = text.indexOf(sign, from);
  return found < 0 ? Number.POSITIVE_INFINITY : found;
}

/** Where no line ends with a return. */
const feedAfter = (text: string, start: number): number => text.indexOf("\n", start) + 1 || text.length;

function lineEndAfter(text: string, start: number): number {
  for (let at = start; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10) return at + 1;
    if (code === 13) return text.charCodeAt(at + 1) === 10 ? at + 2 : at + 1;
  }
  return text.length;
}

const structureWords: ReadonlySet<string> = new Set([...structural, ...containers]);
/** The first is that of a line without one. */
const words: readonly string[] = ["", ...new Set([...structureWords, ...opening])];
const places: ReadonlyMap<string, number> = new Map(words.map((word, place) => [word, place]));
const canOpen: readonly boolean[] = words.map((word) => opening.has(word));
const initials: ReadonlySet<number> = new Set(words.map((word) => word.charCodeAt(0)));

/** The place of the word that begins somewhere, if it is one that dividing asks for. */
function wordAt(text: string, at: number): number {
  let end = at + 1;
  while (isWordSign(text.charCodeAt(end))) end++;
  return places.get(text.slice(at, end)) ?? 0;
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
function netOf(text: string, from: number, end: number): number {
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
