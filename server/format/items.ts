import type { IToken } from "chevrotain";
import { endOf } from "../../grammar/lexer.ts";
import type { WordRow } from "../../grammar/params.ts";
import type { Parsed, Statement } from "../../grammar/parser.ts";
import { type BlockKind, openedBy, rowOf } from "../../grammar/vocabulary.ts";
import { bindArguments } from "../model/arguments.ts";
import { lineStarts, positionOf } from "../text/lines.ts";
import { spellLine } from "./spelling.ts";

/** A line of a block, or a statement with the block it opens, ready to be laid out. */
export type Item =
  | { readonly type: "blank" }
  | { readonly type: "comment"; readonly text: string }
  /** A line that was not understood: it is written as it stands. */
  | RawItem
  | StatementItem;

interface RawItem {
  readonly type: "raw";
  readonly text: string;
}

export interface StatementItem {
  readonly type: "statement";
  readonly word: string;
  readonly head: string;
  readonly args: string;
  readonly opens: boolean;
  readonly comment?: string;
  /** The header as it stands, where its arguments were not understood. */
  readonly rawHeader?: string;
  readonly block?: BlockItem;
}

export interface BlockItem {
  readonly kind: BlockKind;
  /** Whether it was written on one line. */
  readonly inline: boolean;
  readonly items: readonly Item[];
  readonly closeComment?: string;
}

interface Read {
  readonly items: readonly Item[];
  /** Whether all of it was understood. Nothing changes places round what was not. */
  readonly sound: boolean;
}

/** Faults that cost their line and no more. */
const ofLine: ReadonlySet<string> = new Set(["stray", "open-text", "no-word"]);

/** The items of a parsed text, or nothing where its faults do not keep to their lines. */
export function itemsOf(text: string, parsed: Parsed, within: BlockKind): Read | undefined {
  if (parsed.faults.some(({ fault, image }) => !ofLine.has(fault) || image === "{")) return undefined;
  return new Reader(text, parsed).read(within);
}

class Reader {
  readonly #text: string;
  readonly #parsed: Parsed;
  readonly #starts: readonly number[];
  readonly #comments: ReadonlyMap<number, IToken>;
  readonly #faulty: ReadonlySet<number>;
  #sound = true;
  #refused = false;

  constructor(text: string, parsed: Parsed) {
    this.#text = text;
    this.#parsed = parsed;
    this.#starts = lineStarts(text);
    this.#comments = new Map(parsed.comments.map((token) => [this.#line(token.startOffset), token]));
    this.#faulty = new Set(parsed.faults.map(({ start }) => this.#line(start)));
  }

  read(within: BlockKind): Read | undefined {
    const last = this.#starts.length - (this.#text === "" || (this.#starts.at(-1) ?? 0) === this.#text.length ? 2 : 1);
    const items = this.#items(within, this.#parsed.statements, 0, last);
    return this.#refused ? undefined : { items, sound: this.#sound };
  }

  #line(offset: number): number {
    return positionOf(this.#starts, offset).line;
  }

  #lineText(line: number): string {
    return this.#text.slice(this.#starts[line], this.#starts[line + 1]).replace(/[\r\n]+$/, "");
  }

  #items(kind: BlockKind, statements: readonly Statement[], first: number, last: number): Item[] {
    const items: Item[] = [];
    let next = first;
    for (const statement of statements) {
      const line = this.#line(statement.start);
      this.#between(items, next, line - 1);
      items.push(this.#statement(kind, statement));
      next = this.#line(Math.max(statement.end - 1, statement.start)) + 1;
    }
    this.#between(items, next, last);
    return items;
  }

  #between(items: Item[], first: number, last: number): void {
    for (let line = first; line <= last; line++) {
      const text = this.#lineText(line);
      const trimmed = text.trim();
      if (trimmed === "") items.push({ type: "blank" });
      else if (trimmed.startsWith("#")) items.push({ type: "comment", text: trimmed });
      else items.push(this.#raw(text));
    }
  }

  #raw(text: string): Item {
    this.#sound = false;
    return { type: "raw", text };
  }

  #statement(kind: BlockKind, statement: Statement): Item {
    const { word, args, block } = statement;
    const line = this.#line(statement.start);
    const row = rowOf(kind, word.image);
    const understood = row !== undefined && this.#understood(word, row, statement);
    if (!block?.close || this.#line(block.close.startOffset) === line) {
      if (!understood || this.#faulty.has(line)) {
        return this.#raw(this.#lineText(line));
      }
      return this.#understoodStatement(kind, statement, row);
    }
    if (!row?.opens || this.#faulty.has(line) || this.#faulty.has(this.#line(block.close.startOffset))) {
      return this.#refuse();
    }
    const item = this.#understoodStatement(kind, statement, row);
    if (understood || item.type !== "statement") return item;
    this.#sound = false;
    const lineEnd = this.#lineText(line).trimEnd().length + (this.#starts[line] ?? 0);
    if (lineEnd !== endOf(block.open)) return this.#refuse();
    return { ...item, rawHeader: this.#text.slice(this.#starts[line], endOf(args.at(-1) ?? word)) };
  }

  #understood(word: IToken, row: WordRow, { args, block }: Statement): boolean {
    return (!block || row.opens !== undefined) && bindArguments(word, row, args).problems.length === 0;
  }

  #understoodStatement(within: BlockKind, { word, args, block, end }: Statement, row: WordRow): Item {
    const line = this.#line(word.startOffset);
    const spelt = spellLine(word, args, row, within);
    const plain = { type: "statement", word: word.image, ...spelt, opens: row.opens !== undefined } as const;
    if (!block?.close) return { ...plain, ...this.#comment("comment", end) };
    const kind = openedBy(row);
    if (!kind) return this.#refuse();
    const closeLine = this.#line(block.close.startOffset);
    const inline = closeLine === line;
    const items = this.#items(kind, block.statements, line + 1, closeLine - 1);
    const sharesLine = block.statements.some(({ start }) => [line, closeLine].includes(this.#line(start)));
    if (sharesLine && items.some((item) => item.type === "raw")) {
      return inline ? this.#raw(this.#lineText(line)) : this.#refuse();
    }
    const afterClose = endOf(block.close);
    return {
      ...plain,
      ...this.#comment("comment", inline ? afterClose : endOf(block.open)),
      block: { kind, inline, items, ...(inline ? {} : this.#comment("closeComment", afterClose)) },
    };
  }

  /** The comment that follows a place directly, under the name of the field it goes to. */
  #comment<K extends string>(field: K, offset: number): { [F in K]?: string } {
    const comment = this.#comments.get(this.#line(offset));
    if (!comment || comment.startOffset < offset) return {};
    const between = this.#text.slice(offset, comment.startOffset);
    return between.trim() === "" ? ({ [field]: comment.image.trimEnd() } as { [F in K]?: string }) : {};
  }

  #refuse(): Item {
    this.#refused = true;
    return { type: "blank" };
  }
}
