/** Segments from what each line was found to do. */
import { endOf, isToken, lex } from "../../grammar/lexer.ts";
import type { Mend } from "../../grammar/mends.ts";
import { containers, structural } from "../../grammar/vocabulary.ts";
import type { Line } from "./read-lines.ts";
import { type Draft, finish, inlineStructureWords, type Segment } from "./segment.ts";
import type { Step } from "./step.ts";

export function rebuild(
  text: string,
  lines: readonly Line[],
  steps: readonly Step[],
  wordAt: (index: number) => string,
): Segment[] {
  const builder = new Builder(text);
  lines.forEach((line, index) => {
    builder.add(line, steps[index] as Step, () => wordAt(index));
  });
  return builder.finish();
}

class Builder {
  readonly #text: string;
  readonly #out: Draft[] = [];
  readonly #containers: Draft[] = [];
  #leaf: Draft | undefined;
  /** Blocks open within the leaf, itself included. */
  #depth = 0;
  #ends = 0;

  constructor(text: string) {
    this.#text = text;
  }

  add(line: Line, { act, ends }: Step, word: () => string): void {
    for (let count = 0; count < ends; count++) this.#endUnclosed(line);
    if (this.#leaf) this.#inLeaf(this.#leaf, line, act);
    else this.#outside(line, act, word);
  }

  finish(): Segment[] {
    if (this.#leaf) this.#leaf.fault = "unclosed";
    for (const draft of this.#containers) draft.fault = "unclosed";
    return this.#out.map((draft) => finish(this.#text, draft));
  }

  #endUnclosed(line: Line): void {
    if (this.#leaf && this.#depth > 1) {
      this.#depth--;
      this.#mend(this.#leaf, { kind: "lost-close", at: line.start - this.#leaf.start });
    } else if (this.#leaf) {
      this.#leaf.fault = "unclosed";
      this.#leaf = undefined;
    } else {
      const container = this.#containers.pop();
      if (!container) return;
      container.fault = "unclosed";
      this.#ends++;
    }
  }

  #inLeaf(leaf: Draft, line: Line, act: Step["act"]): void {
    leaf.end = line.end;
    leaf.lines++;
    this.#mendFor(leaf, line, act);
    if (act === "open" || act === "lost-open") this.#depth++;
    if (act === "close" && --this.#depth === 0) this.#leaf = undefined;
  }

  #outside(line: Line, act: Step["act"], word: () => string): void {
    if (act === "close") {
      this.#start("close", line, "");
      this.#containers.pop();
    } else if (act === "extra-close") this.#start("close", line, "").fault = "extra-close";
    else if (act === "open" || act === "lost-open") this.#mendFor(this.#opened(line, word()), line, act);
    else if (act === "extra-open") this.#mendFor(this.#start("block", line, word()), line, act);
    else if (line.net !== 0 || (structural.has(line.word) && !inlineStructureWords.has(line.word)))
      this.#start("block", line, word());
    else this.#plain(line);
  }

  #opened(line: Line, word: string): Draft {
    if (containers.has(word)) {
      const draft = this.#start("open", line, word);
      this.#containers.push(draft);
      return draft;
    }
    this.#leaf = this.#start("block", line, word);
    this.#depth = 1;
    return this.#leaf;
  }

  #plain(line: Line): void {
    const last = this.#out.at(-1);
    if (last?.kind !== "lines" || this.#ends > 0) this.#start("lines", line, "");
    else {
      last.end = line.end;
      last.lines++;
    }
  }

  #start(kind: Segment["kind"], line: Line, word: string): Draft {
    const draft: Draft = {
      kind,
      word: kind === "lines" ? "" : word,
      start: line.start,
      end: line.end,
      indent: 0,
      lines: 1,
    };
    if (this.#ends > 0) draft.ends = this.#ends;
    this.#ends = 0;
    this.#out.push(draft);
    return draft;
  }

  #mendFor(draft: Draft, line: Line, act: Step["act"]): void {
    if (act === "plain" || act === "open" || act === "close") return;
    const { tokens } = lex(this.#text.slice(line.start, line.end));
    const solid = tokens.filter((token) => !isToken(token, "NewLine"));
    const brace = solid.findLast((token) => isToken(token, act === "extra-close" ? "Close" : "Open"));
    const last = solid.at(-1);
    const within = act === "lost-open" ? (last ? endOf(last) : 0) : (brace?.startOffset ?? 0);
    this.#mend(draft, { kind: act, at: line.start - draft.start + within });
  }

  #mend(draft: Draft, mend: Mend): void {
    draft.mends ??= [];
    draft.mends.push(mend);
    draft.fault ??= "braces";
  }
}
