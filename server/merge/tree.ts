/**
 * A schedule as what is merged: blocks and lines, each with what tells it from others of its block, and with the bytes it
 * was written in. Comments and blank lines belong to what they stand above.
 */
import { isToken } from "../../grammar/lexer.ts";
import { parse } from "../../grammar/parser.ts";
import { type BlockKind, openedBy } from "../../grammar/vocabulary.ts";
import { type Segment, split } from "../syntax/split.ts";
import { type Body, bodyOf, type Heading, headingOf, type Item, itemOf } from "./item.ts";
import { commentsOf, notRead, type Part, readItems } from "./read-items.ts";

export type Tree = { readonly body: Body } | { readonly unreadable: string };

/** Items of a stretch of text are made once, however many versions have it: so what is the same is the same object. */
export class Memo {
  readonly #parts = new Map<string, Part>();
  readonly #below = new Map<Item, Map<string, Item>>();

  part(text: string, kind: BlockKind): Part {
    const key = `${kind}\n${text}`;
    const before = this.#parts.get(key);
    if (before) return before;
    const part = readItems(text, kind);
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
