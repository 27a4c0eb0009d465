/** Division by braces and by the words that begin a part, for a file whose braces add up or nearly do. */
import { containers, structural } from "../../grammar/vocabulary.ts";
import type { Line } from "./read-lines.ts";
import { type Draft, finish, inlineStructureWords, mayHold, type Segment } from "./segment.ts";

export function divide(text: string, lines: readonly Line[]): Segment[] {
  const division = new Division();
  for (const line of lines) division.take(line);
  return division.end().map((draft) => finish(text, draft));
}

/** What was divided so far: the containers that are open, and the block without parts of its own that is. */
class Division {
  readonly #drafts: Draft[] = [];
  readonly #containers: Draft[] = [];
  #leaf: Draft | undefined;
  /** Braces of the leaf that are open. */
  #depth = 0;

  take(line: Line): void {
    if (this.#leaf && !structural.has(line.word)) {
      this.#takeIntoLeaf(this.#leaf, line);
      return;
    }
    this.#endLeaf();
    if (line.closesFirst && line.net < 0) this.#close(line);
    else if (containers.has(line.word) && line.net > 0) this.#open(line);
    else if (line.net > 0 || (structural.has(line.word) && !inlineStructureWords.has(line.word))) this.#begin(line);
    else this.#plain(line);
  }

  /** All drafts; what is still open was never closed. */
  end(): readonly Draft[] {
    this.#endLeaf();
    this.#dropUntil(() => false);
    return this.#drafts;
  }

  #takeIntoLeaf(leaf: Draft, line: Line): void {
    extend(leaf, line);
    this.#depth += line.net;
    if (this.#depth <= 0) this.#leaf = undefined;
  }

  #endLeaf(): void {
    if (this.#leaf) this.#leaf.fault = "unclosed";
    this.#leaf = undefined;
  }

  #close(line: Line): void {
    const draft = this.#add("close", line);
    if (!this.#containers.pop()) draft.fault = "extra-close";
  }

  #open(line: Line): void {
    this.#dropUntil((word) => mayHold(word, line.word));
    this.#containers.push(this.#add("open", line));
  }

  #begin(line: Line): void {
    if (line.word === "supply") this.#dropUntil((word) => word === "installation");
    const draft = this.#add("block", line);
    this.#depth = line.net;
    if (this.#depth > 0) this.#leaf = draft;
  }

  #plain(line: Line): void {
    const last = this.#drafts.at(-1);
    if (last?.kind === "lines") extend(last, line);
    else this.#add("lines", line);
  }

  #add(kind: Segment["kind"], line: Line): Draft {
    const word = kind === "open" || kind === "block" ? line.word : "";
    const draft: Draft = { kind, word, start: line.start, end: line.end, indent: line.indent, lines: 1 };
    this.#drafts.push(draft);
    return draft;
  }

  /** Ends open containers that were never closed, up to one whose word holds. */
  #dropUntil(holds: (word: string) => boolean): void {
    for (let last = this.#containers.at(-1); last && !holds(last.word); last = this.#containers.at(-1)) {
      last.fault = "unclosed";
      this.#containers.pop();
    }
  }
}

function extend(draft: Draft, line: Line): void {
  draft.end = line.end;
  draft.lines++;
}
