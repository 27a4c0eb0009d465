/** The lines and blocks in a stretch of text. */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { WordRow } from "../../grammar/params.ts";
import { type Parsed, parse, type Statement } from "../../grammar/parser.ts";
import { type BlockKind, openedBy, vocabulary } from "../../grammar/vocabulary.ts";
import { spell } from "../format/spelling.ts";
import { lineStarts, positionOf } from "../text/lines.ts";
import { type Body, bodyOf, headingOf, type Item, itemOf, wordless } from "./item.ts";

export interface Part {
  readonly items: readonly Item[];
  readonly tail: readonly string[];
  /** Why it cannot be divided into lines that say one thing each. */
  readonly unreadable?: string;
}

export const readItems = (text: string, kind: BlockKind): Part => new Reader(text, parse(text)).read(kind);

export const notRead = (line: string): string => `the line “${line.trim()}” cannot be read`;

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

export const commentsOf = ({ comments }: Parsed): string => comments.map(({ image }) => image.trimEnd()).join(" ");

const speltWhole = ({ tokens, comments }: Parsed, { start, end }: Statement): string =>
  [...tokens, ...comments]
    .filter((token) => token.startOffset >= start && endOf(token) <= end && !isToken(token, "NewLine"))
    .map(spell)
    .join(" ");
