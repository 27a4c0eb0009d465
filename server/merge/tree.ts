/**
 * A schedule as what is merged: blocks and lines, each with what tells it from others of its block, and with the bytes it
 * was written in. Comments and blank lines belong to what they stand above.
 */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { WordRow } from "../../grammar/params.ts";
import { type Parsed, parse, type Statement } from "../../grammar/parser.ts";
import { type BlockKind, openedBy, rowOf, vocabulary } from "../../grammar/vocabulary.ts";
import { spell } from "../format/spelling.ts";
import { bindArguments } from "../model/arguments.ts";
import { type Segment, split } from "../syntax/split.ts";
import { lineStarts, positionOf } from "../text/lines.ts";
import { claimsOf, definedToken, keyOf, nameTokens } from "./key.ts";
import { type Sense, senseOf } from "./sense.ts";

/** A line, or a block with what is in it. */
export interface Item {
  readonly word: string;
  readonly row: WordRow | undefined;
  /** What tells it from others of its word in its block. */
  readonly key: string;
  /** What only one of its block may say: its own key, each number of a run of ways, a result beside a reading. */
  readonly claims: readonly string[];
  /** Word and key as a person would name it. */
  readonly name: string;
  /** What its line says besides, as it is spelt. */
  readonly says: string;
  /** Comments and blank lines above it, each with its line end. */
  readonly lead: readonly string[];
  /** Its line, or all its lines where it is taken as a whole; with line ends. */
  readonly head: string;
  /** Its line in the one spelling, with the comment behind it. */
  readonly spelt: string;
  /** As `spelt`, without the name it defines. */
  readonly rest: string;
  /** What its line says in base units; none where it was not understood. */
  readonly sense?: Sense;
  readonly title?: string;
  readonly body?: Body;
  /** Written on one line with its block. */
  readonly inline: boolean;
  readonly broken: boolean;
}

export interface Body {
  readonly kind: BlockKind;
  readonly items: readonly Item[];
  /** Comments and blank lines after the last item. */
  readonly tail: readonly string[];
  /** The line of its closing brace. */
  readonly close: string;
  /** The comment behind the closing brace. */
  readonly remark: string;
}

export type Tree = { readonly body: Body } | { readonly unreadable: string };

/** Items of a stretch of text are made once, however many versions have it: so what is the same is the same object. */
export class Memo {
  readonly #parts = new Map<string, Part>();
  readonly #below = new Map<Item, Map<string, Item>>();

  part(text: string, kind: BlockKind): Part {
    const key = `${kind}\n${text}`;
    const before = this.#parts.get(key);
    if (before) return before;
    const part = new Reader(text, parse(text)).read(kind);
    this.#parts.set(key, part);
    return part;
  }

  /** The item with some lines above it. */
  below(lead: readonly string[], item: Item): Item {
    if (lead.length === 0) return item;
    const all = this.#below.get(item) ?? new Map<string, Item>();
    this.#below.set(item, all);
    const key = lead.join("");
    const before = all.get(key);
    if (before) return before;
    const made = { ...item, lead: [...lead, ...item.lead] };
    all.set(key, made);
    return made;
  }
}

interface Part {
  readonly items: readonly Item[];
  readonly tail: readonly string[];
  /** Why it cannot be divided into lines that say one thing each. */
  readonly unreadable?: string;
}

/** `text` has a line end behind every line. */
export const treeOf = (text: string, memo: Memo): Tree => new Builder(memo).build(split(text));

interface Frame {
  readonly kind: BlockKind;
  readonly items: Item[];
  trivia: readonly string[];
  /** The line that opened it; none for the file. */
  readonly head?: { readonly part: Heading; readonly text: string; readonly lead: readonly string[] };
}

const lostBrace = "a brace is lost or one too many";
const notRead = (line: string): string => `the line “${line.trim()}” cannot be read`;

class Builder {
  readonly #memo: Memo;
  readonly #stack: Frame[] = [{ kind: "file", items: [], trivia: [] }];
  #unreadable: string | undefined;

  constructor(memo: Memo) {
    this.#memo = memo;
  }

  build(segments: readonly Segment[]): Tree {
    for (const segment of segments) if (this.#unreadable === undefined) this.#add(segment);
    const file = this.#frame;
    if (this.#unreadable === undefined && this.#stack.length > 1) this.#unreadable = lostBrace;
    if (this.#unreadable !== undefined) return { unreadable: this.#unreadable };
    return { body: bodyOf(file.kind, file.items, file.trivia, "", "") };
  }

  get #frame(): Frame {
    return this.#stack.at(-1) as Frame;
  }

  #add(segment: Segment): void {
    if (segment.fault || segment.ends) this.#unreadable = lostBrace;
    else if (segment.kind === "open") this.#open(segment);
    else if (segment.kind === "close") this.#close(segment);
    else this.#part(segment);
  }

  #open({ text }: Segment): void {
    const parsed = parse(text);
    const [statement, ...others] = parsed.statements;
    const alone = statement?.block && statement.block.statements.length === 0 && others.length === 0;
    const { kind, trivia } = this.#frame;
    const part = statement && headingOf(kind, statement, commentsOf(parsed));
    const opens = openedBy(part?.row);
    if (!alone || !part || !opens || part.key === "" || parsed.faults.some(({ fault }) => fault !== "unclosed")) {
      this.#unreadable = notRead(text);
      return;
    }
    this.#frame.trivia = [];
    this.#stack.push({ kind: opens, items: [], trivia: [], head: { part, text, lead: trivia } });
  }

  #close({ text }: Segment): void {
    const { kind, items, trivia, head } = this.#frame;
    const parsed = parse(text);
    const solid = parsed.tokens.filter((token) => !isToken(token, "NewLine"));
    if (!head || solid.length !== 1) {
      this.#unreadable = notRead(text);
      return;
    }
    this.#stack.pop();
    const body = bodyOf(kind, items, trivia, text, commentsOf(parsed));
    this.#frame.items.push(itemOf(head.part, { lead: head.lead, head: head.text, body }));
  }

  #part({ text }: Segment): void {
    const frame = this.#frame;
    const { items, tail, unreadable } = this.#memo.part(text, frame.kind);
    this.#unreadable ??= unreadable;
    const [first, ...others] = items;
    if (!first) {
      frame.trivia = [...frame.trivia, ...tail];
      return;
    }
    frame.items.push(this.#memo.below(frame.trivia, first), ...others);
    frame.trivia = tail;
  }
}

/** Faults that cost their line and no more. */
const ofLine: ReadonlySet<string> = new Set(["stray", "open-text", "no-word"]);

class Reader {
  readonly #text: string;
  readonly #parsed: Parsed;
  readonly #starts: readonly number[];
  readonly #comments: ReadonlyMap<number, IToken>;
  readonly #faulty: ReadonlySet<number>;
  #unreadable: string | undefined;

  constructor(text: string, parsed: Parsed) {
    this.#text = text;
    this.#parsed = parsed;
    this.#starts = lineStarts(text);
    this.#comments = new Map(parsed.comments.map((token) => [this.#line(token.startOffset), token]));
    this.#faulty = new Set(parsed.faults.map(({ start }) => this.#line(start)));
    const other = parsed.faults.find(({ fault, image }) => !ofLine.has(fault) || image === "{");
    if (other) this.#refuse(notRead(this.#lineText(this.#line(other.start))));
    if (parsed.faults.some(({ fault }) => fault === "conflict")) this.#unreadable = "it holds marks of a conflict";
  }

  read(kind: BlockKind): Part {
    const part = this.#items(kind, this.#parsed.statements, 0, this.#starts.length - 2);
    return this.#unreadable === undefined ? part : { ...part, unreadable: this.#unreadable };
  }

  #refuse(reason: string): void {
    this.#unreadable ??= reason;
  }

  #line(offset: number): number {
    return positionOf(this.#starts, offset).line;
  }

  #lineText(line: number): string {
    return this.#text.slice(this.#starts[line], this.#starts[line + 1]);
  }

  #items(kind: BlockKind, statements: readonly Statement[], first: number, last: number): Part {
    const items: Item[] = [];
    let next = first;
    let above = "";
    for (const statement of statements) {
      const line = this.#line(statement.start);
      if (line < next) this.#refuse(`the line “${this.#lineText(line).trim()}” holds two facts`);
      const lead = this.#between(items, next, line - 1);
      const item = this.#statement(kind, statement, lead, above);
      if (isFollowed(kind, item.word)) above = item.key;
      items.push(item);
      next = this.#line(Math.max(statement.end - 1, statement.start)) + 1;
    }
    return { items, tail: this.#between(items, next, last) };
  }

  /** Lines that belong to no statement: comments and blank ones are returned, others are items that say nothing known. */
  #between(items: Item[], first: number, last: number): string[] {
    let lead: string[] = [];
    for (let line = first; line <= last; line++) {
      const text = this.#lineText(line);
      const trimmed = text.trim();
      if (trimmed === "" || trimmed.startsWith("#")) lead.push(text);
      else {
        items.push(wordless(text, lead));
        lead = [];
      }
    }
    return lead;
  }

  #statement(kind: BlockKind, statement: Statement, lead: readonly string[], above: string): Item {
    const { block } = statement;
    const first = this.#line(statement.start);
    const last = this.#line(Math.max(statement.end - 1, statement.start));
    const broken = this.#faultyWithin(first, block ? first : last);
    const part = headingOf(kind, statement, this.#commentAt(first), broken, above);
    const whole = this.#text.slice(this.#starts[first], this.#starts[last + 1]);
    const opens = openedBy(part.row);
    if (!block?.close || !opens) return itemOf(part, { lead, head: whole });
    if (part.broken && part.key === "") this.#refuse(notRead(this.#lineText(first)));
    const closeLine = this.#line(block.close.startOffset);
    const inner = block.statements;
    if (closeLine === first)
      return itemOf(part, { lead, head: whole, body: this.#inlineBody(opens, statement), inline: true });
    const shares = inner.some(({ start }) => [first, closeLine].includes(this.#line(start)));
    if (shares || this.#line(block.open.startOffset) !== first)
      return itemOf(part, { lead, head: whole, spelt: speltWhole(this.#parsed, statement) });
    const { items, tail } = this.#items(opens, inner, first + 1, closeLine - 1);
    const body = bodyOf(
      opens,
      items,
      tail,
      this.#lineText(closeLine),
      closeLine === first ? "" : this.#commentAt(closeLine),
    );
    return itemOf(part, { lead, head: this.#lineText(first), body });
  }

  /** The block of one line, its statements as they would stand on lines of their own. */
  #inlineBody(kind: BlockKind, { block, start }: Statement): Body {
    const lineText = this.#lineText(this.#line(start));
    const indent = /^[^\S\r\n]*/.exec(lineText)?.[0] ?? "";
    const end = /[\r\n]+$/.exec(lineText)?.[0] ?? "\n";
    const items = (block?.statements ?? []).map((inner) => {
      if (inner.block) this.#refuse(`the line “${lineText.trim()}” holds two facts`);
      const text = `${indent}  ${this.#text.slice(inner.start, inner.end)}${end}`;
      return itemOf(headingOf(kind, inner, ""), { lead: [], head: text });
    });
    return bodyOf(kind, items, [], `${indent}}${end}`, "");
  }

  #commentAt(line: number): string {
    return this.#comments.get(line)?.image.trimEnd() ?? "";
  }

  #faultyWithin(first: number, last: number): boolean {
    for (let line = first; line <= last; line++) if (this.#faulty.has(line)) return true;
    return false;
  }
}

/** Whether lines of another word belong to this one, as answers to their question. */
const isFollowed = (kind: BlockKind, word: string): boolean =>
  Object.values<WordRow>(vocabulary[kind]).some(({ follows }) => follows === word);

const commentsOf = ({ comments }: Parsed): string => comments.map(({ image }) => image.trimEnd()).join(" ");

const speltWhole = ({ tokens, comments }: Parsed, { start, end }: Statement): string =>
  [...tokens, ...comments]
    .filter((token) => token.startOffset >= start && endOf(token) <= end && !isToken(token, "NewLine"))
    .map(spell)
    .join(" ");

/** A statement's line without what stands round it. */
interface Heading {
  readonly word: string;
  readonly row: WordRow | undefined;
  readonly key: string;
  readonly claims: readonly string[];
  readonly name: string;
  readonly says: string;
  readonly spelt: string;
  readonly rest: string;
  readonly sense?: Sense;
  readonly title?: string;
  readonly broken: boolean;
}

function headingOf(kind: BlockKind, statement: Statement, comment: string, faulty = false, above = ""): Heading {
  const { word: token, args, block } = statement;
  const word = token.image;
  const row = rowOf(kind, word);
  const bound = row && bindArguments(token, row, args);
  const broken = faulty || !bound || bound.problems.length > 0;
  const defined = row && definedToken(row, bound, args);
  const behind = `${block ? " {" : ""}${comment === "" ? "" : ` ${comment}`}`;
  const text = args.find((arg) => isToken(arg, "Text"))?.image;
  const parts = { word, row, spelt: [token, ...args].map(spell).join(" ") + behind };
  const rest = [token, ...args.filter((arg) => arg !== defined)].map(spell).join(" ") + behind;
  const key = row && bound && (!broken || defined) ? keyOf(word, row, bound, above) : "";
  const named = row && bound ? nameTokens(row, bound, args) : [];
  return {
    ...parts,
    rest,
    key,
    claims: row && bound && !broken ? claimsOf(word, row, bound, key) : key === "" ? [] : [key],
    name: [token, ...named].map(spell).join(" "),
    says: args
      .filter((arg) => !named.includes(arg))
      .map(spell)
      .join(" "),
    ...(broken || !bound ? {} : { sense: senseOf(bound, comment, block !== undefined) }),
    ...(text === undefined ? {} : { title: text }),
    broken,
  };
}

interface Written {
  readonly lead: readonly string[];
  readonly head: string;
  readonly body?: Body;
  readonly inline?: boolean;
  readonly spelt?: string;
}

const itemOf = (part: Heading, { lead, head, body, inline = false, spelt = part.spelt }: Written): Item => ({
  ...part,
  spelt,
  lead,
  head,
  ...(body ? { body } : {}),
  inline,
});

/** A line that begins with no word. */
function wordless(text: string, lead: readonly string[]): Item {
  const spelt = text.trim();
  const part = {
    word: "",
    row: undefined,
    key: "",
    claims: [],
    name: spelt,
    says: spelt,
    spelt,
    rest: spelt,
    broken: true,
  };
  return itemOf(part, { lead, head: text });
}

const bodyOf = (
  kind: BlockKind,
  items: readonly Item[],
  tail: readonly string[],
  close: string,
  remark: string,
): Body => ({ kind, items, tail, close, remark });

/** Whether two say the same with the same comments, in the same order. */
export const isSame = (a: Item, b: Item): boolean =>
  a === b || (isSameBelow(a, b) && remarksIn(a.lead) === remarksIn(b.lead));

/** The same, whatever stands above them. */
export const isSameBelow = (a: Item, b: Item): boolean =>
  a === b || (a.spelt === b.spelt && isSameBody(a.body, b.body));

export const isSameBody = (a: Body | undefined, b: Body | undefined): boolean =>
  a === b ||
  (a !== undefined &&
    b !== undefined &&
    a.remark === b.remark &&
    saysSame(a.items, b.items) &&
    remarksIn(a.tail) === remarksIn(b.tail));

export const saysSame = (a: readonly Item[], b: readonly Item[]): boolean =>
  a.length === b.length && a.every((item, index) => isSame(item, b[index] as Item));

/** What an item says but for the comments above it, as one text: equal texts mean the same. */
export const bare = ({ spelt, body }: Item): string =>
  body ? `${spelt}\n${body.items.map((item) => remarksIn(item.lead) + bare(item)).join("\n")}}${body.remark}` : spelt;

/** The comments among some lines. */
export const remarksIn = (lines: readonly string[]): string =>
  lines
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .map((line) => `${line}\n`)
    .join("");
