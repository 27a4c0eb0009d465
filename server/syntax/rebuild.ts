/** Segments from what each line was found to do. */
import { endOf, isToken, lex } from "../../grammar/lexer.ts";
import type { Mend } from "../../grammar/mends.ts";
import { containers, structural } from "../../grammar/vocabulary.ts";
import type { Cuttable, Lines } from "./lines.ts";
import { type Draft, draftAt, extendTo, inlineStructureWords, type Segment } from "./segment.ts";
import { type Act, isMending, type Steps } from "./step.ts";

export function rebuild(
  text: Cuttable,
  lines: Lines,
  { acts, ends }: Steps,
  wordAt: (line: number) => string,
): readonly Draft[] {
  const builder = new Builder(text, lines, wordAt);
  for (let line = 0; line < lines.count; line++) {
    for (let count = ends.get(line) ?? 0; count > 0; count--) builder.endUnclosed(line);
    builder.add(line, acts[line] ?? "plain");
  }
  return builder.finish();
}

class Builder {
  readonly #text: Cuttable;
  readonly #lines: Lines;
  readonly #wordAt: (line: number) => string;
  readonly #out: Draft[] = [];
  readonly #containers: Draft[] = [];
  #leaf: Draft | undefined;
  /** Blocks open within the leaf, itself included. */
  #depth = 0;
  #ends = 0;
  /** The brace of the last part that was opened, on a line of its own. */
  #brace = -1;

  constructor(text: Cuttable, lines: Lines, wordAt: (line: number) => string) {
    this.#text = text;
    this.#lines = lines;
    this.#wordAt = wordAt;
  }

  add(line: number, act: Act): void {
    if (line <= this.#brace) {
      extendTo(this.#out.at(-1) as Draft, this.#lines, line);
      return;
    }
    this.#brace = this.#lines.braceOf(line) ?? -1;
    if (this.#leaf) this.#inLeaf(this.#leaf, line, act);
    else this.#outside(line, act);
  }

  finish(): readonly Draft[] {
    if (this.#leaf) this.#leaf.fault = "unclosed";
    for (const draft of this.#containers) draft.fault = "unclosed";
    return this.#out;
  }

  endUnclosed(line: number): void {
    if (this.#leaf && this.#depth > 1) {
      this.#depth--;
      this.#mend(this.#leaf, { kind: "lost-close", at: this.#lines.start(line) - this.#leaf.start });
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

  #inLeaf(leaf: Draft, line: number, act: Act): void {
    extendTo(leaf, this.#lines, line);
    this.#mendFor(leaf, line, act);
    if (act === "open" || act === "lost-open") this.#depth++;
    if (act === "close" && --this.#depth === 0) this.#leaf = undefined;
  }

  #outside(line: number, act: Act): void {
    if (act === "close") {
      this.#start("close", line, "");
      this.#containers.pop();
    } else if (act === "whole") this.#start("block", line, this.#lines.word(line));
    else if (act === "extra-close") this.#start("close", line, "").fault = "extra-close";
    else if (act === "open" || act === "lost-open") this.#mendFor(this.#opened(line, this.#wordAt(line)), line, act);
    else if (act === "extra-open") this.#mendFor(this.#start("block", line, this.#wordAt(line)), line, act);
    else if (this.#beginsPart(line)) this.#start("block", line, this.#wordAt(line));
    else this.#plain(line);
  }

  #beginsPart(line: number): boolean {
    const word = this.#lines.word(line);
    return this.#lines.net(line) !== 0 || (structural.has(word) && !inlineStructureWords.has(word));
  }

  #opened(line: number, word: string): Draft {
    if (containers.has(word)) {
      const draft = this.#start("open", line, word);
      this.#containers.push(draft);
      return draft;
    }
    this.#leaf = this.#start("block", line, word);
    this.#depth = 1;
    return this.#leaf;
  }

  #plain(line: number): void {
    const last = this.#out.at(-1);
    if (last?.kind !== "lines" || this.#ends > 0) this.#start("lines", line, "");
    else extendTo(last, this.#lines, line);
  }

  #start(kind: Segment["kind"], line: number, word: string): Draft {
    const draft = draftAt(this.#lines, line, kind, word);
    if (this.#ends > 0) draft.ends = this.#ends;
    this.#ends = 0;
    this.#out.push(draft);
    return draft;
  }

  #mendFor(draft: Draft, line: number, act: Act): void {
    if (!isMending(act)) return;
    const start = this.#lines.start(line);
    const { tokens } = lex(this.#text.slice(start, this.#lines.end(line)));
    const solid = tokens.filter((token) => !isToken(token, "NewLine"));
    const brace = solid.findLast((token) => isToken(token, act === "extra-close" ? "Close" : "Open"));
    const last = solid.at(-1);
    const within = act === "lost-open" ? (last ? endOf(last) : 0) : (brace?.startOffset ?? 0);
    this.#mend(draft, { kind: act, at: start - draft.start + within });
  }

  #mend(draft: Draft, mend: Mend): void {
    draft.mends ??= [];
    draft.mends.push(mend);
    draft.fault ??= "braces";
  }
}
