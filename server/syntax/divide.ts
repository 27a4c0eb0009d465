/** Division by braces and by the words that begin a part, for a file whose braces add up or nearly do. */
import { containers, structural } from "../../grammar/vocabulary.ts";
import type { Lines } from "./lines.ts";
import { type Draft, draftAt, extendTo, inlineStructureWords, mayHold, type Segment } from "./segment.ts";

export function divide(lines: Lines): readonly Draft[] {
  const division = new Division(lines);
  for (let line = 0; line < lines.count; line++) division.take(line);
  return division.end();
}

/** What was divided so far: the containers that are open, and the block without parts of its own that is. */
class Division {
  readonly #lines: Lines;
  readonly #drafts: Draft[] = [];
  readonly #containers: Draft[] = [];
  #leaf: Draft | undefined;
  /** Braces of the leaf that are open. */
  #depth = 0;
  /** The brace of the last part that was opened, on a line of its own. */
  #brace = -1;

  constructor(lines: Lines) {
    this.#lines = lines;
  }

  take(line: number): void {
    if (line <= this.#brace) {
      this.#extend(this.#drafts.at(-1) as Draft, line);
      return;
    }
    this.#brace = this.#lines.braceOf(line) ?? -1;
    const word = this.#lines.word(line);
    if (this.#leaf && !structural.has(word)) {
      this.#takeIntoLeaf(this.#leaf, line);
      return;
    }
    this.#endLeaf();
    const net = this.#lines.net(line);
    if (net < 0 && this.#lines.closesFirst(line)) this.#close(line);
    else if (net > 0 && containers.has(word)) this.#open(line, word);
    else if (net > 0 || (structural.has(word) && !inlineStructureWords.has(word))) this.#begin(line, word);
    else this.#plain(line);
  }

  /** All drafts; what is still open was never closed. */
  end(): readonly Draft[] {
    this.#endLeaf();
    this.#dropUntil(() => false);
    return this.#drafts;
  }

  #takeIntoLeaf(leaf: Draft, line: number): void {
    this.#extend(leaf, line);
    if (!this.#lines.isWhole(line)) this.#depth += this.#lines.net(line);
    if (this.#depth <= 0) this.#leaf = undefined;
  }

  #endLeaf(): void {
    if (this.#leaf) this.#leaf.fault = "unclosed";
    this.#leaf = undefined;
  }

  #close(line: number): void {
    const draft = this.#add("close", line);
    if (!this.#containers.pop()) draft.fault = "extra-close";
  }

  #open(line: number, word: string): void {
    this.#dropUntil((outer) => mayHold(outer, word));
    this.#containers.push(this.#add("open", line, word));
  }

  #begin(line: number, word: string): void {
    if (word === "supply") this.#dropUntil((outer) => outer === "installation");
    const draft = this.#add("block", line, word);
    this.#depth = this.#lines.isWhole(line) ? 0 : this.#lines.net(line);
    if (this.#depth > 0) this.#leaf = draft;
  }

  #plain(line: number): void {
    const last = this.#drafts.at(-1);
    if (last?.kind === "lines") this.#extend(last, line);
    else this.#add("lines", line);
  }

  #add(kind: Segment["kind"], line: number, word = ""): Draft {
    const draft = draftAt(this.#lines, line, kind, word);
    this.#drafts.push(draft);
    return draft;
  }

  #extend(draft: Draft, line: number): void {
    extendTo(draft, this.#lines, line);
  }

  /** Ends open containers that were never closed, up to one whose word holds. */
  #dropUntil(holds: (word: string) => boolean): void {
    for (let last = this.#containers.at(-1); last && !holds(last.word); last = this.#containers.at(-1)) {
      last.fault = "unclosed";
      this.#containers.pop();
    }
  }
}
