/**
 * Division of a file whose braces do not add up, by its indentation. A block's lines stand further in than the line
 * that opens it, and its brace below that line: so each line shows which blocks are still open, and a brace that is
 * lost or too many is one change where it happened, not a fault in all that follows.
 */
import { word as firstWord } from "../../grammar/tokens.ts";
import { containers, opening, structural } from "../../grammar/vocabulary.ts";
import { isSlipOf } from "../text/slip-of.ts";
import type { Cuttable, Lines } from "./lines.ts";
import { rebuild } from "./rebuild.ts";
import type { Draft } from "./segment.ts";
import { type Act, isMending, type Steps } from "./step.ts";

interface Frame {
  readonly indent: number;
  readonly word: string;
  /** The line that opened it, and its place among the lines that have something on them. */
  readonly line: number;
  readonly place: number;
}

/**
 * Nothing where the indentation is no help, or where to read by it takes more than so many changes; the row of a block
 * that cannot be taken whole in its place, which has to be weighed by its lines.
 */
export function divideByIndent(
  text: Cuttable,
  lines: Lines,
  most: number,
): readonly Draft[] | { readonly notWhole: number } | undefined {
  const reader = new Indentation(text, lines);
  if (!reader.isTrustworthy()) return undefined;
  const steps = reader.steps();
  if ("notWhole" in steps) return steps;
  return reader.changes > most ? undefined : rebuild(text, lines, steps, (line) => reader.wordAt(line));
}

class Indentation {
  readonly #text: Cuttable;
  readonly #lines: Lines;
  /** Lines that have something on them besides a comment. */
  readonly #solid: Int32Array;
  readonly #acts: Act[];
  readonly #ends = new Map<number, number>();
  #frames: Frame[] = [];
  #mendings = 0;

  constructor(text: Cuttable, lines: Lines) {
    this.#text = text;
    this.#lines = lines;
    this.#solid = lines.solid();
    this.#acts = new Array<Act>(lines.count).fill("plain");
  }

  /** Braces that were put in or left out, with those of blocks that are still open at the end. */
  get changes(): number {
    return this.#frames.length + this.#mendings;
  }

  /** Whether each line has one brace to weigh, and the lines below those that open a block stand further in, but for one in four. */
  isTrustworthy(): boolean {
    let openings = 0;
    let deeper = 0;
    for (let line = 0; line < this.#lines.count; line++) {
      const net = this.#lines.net(line);
      if (net < -1 || net > 1 || (net >= 0 && this.#lines.closesFirst(line))) return false;
    }
    for (let place = 0; place < this.#solid.length; place++) {
      const inside = this.#lines.openings(this.#at(place));
      openings += inside;
      deeper += inside;
      if (place === this.#solid.length - 1 || !this.#opensAlone(this.#at(place))) continue;
      // A brace at once behind may be the one that is too many.
      if (this.#lines.closesFirst(this.#at(place + 1))) continue;
      openings++;
      if (this.#isDeeper(place + 1, this.#lines.indent(this.#at(place)))) deeper++;
    }
    return openings > 0 && deeper * 4 >= openings * 3;
  }

  /** Whether it is a line that opens a block, and not the whole of one. */
  #opensAlone(line: number): boolean {
    return this.#lines.net(line) > 0 && !this.#lines.isWhole(line);
  }

  /** The row of a block that is not whole in its place, if there is one. */
  steps(): Steps | { readonly notWhole: number } {
    for (let place = 0; place < this.#solid.length; place++) {
      const line = this.#at(place);
      if (this.#lines.isWhole(line)) {
        // What stands further in below a brace may be what it would have closed.
        if (this.#isDeeper(place + 1, this.#lines.indent(line))) return { notWhole: line };
        this.#endBefore(line, place);
        this.#mark(line, "whole");
      } else if (this.#lines.closesFirst(line)) this.#close(line, place);
      else if (this.#lines.net(line) < 0) this.#closeBehind(line, place);
      else this.#other(line, place);
    }
    return { acts: this.#acts, ends: this.#ends };
  }

  /** The first word of a line; of one that opens a part under a misspelt word, the word that is meant. */
  wordAt(line: number): string {
    const known = this.#lines.word(line);
    const written = known || wordOf(this.#written(line));
    return this.#lines.net(line) > 0 && !opening.has(written) ? partMeant(written) : written;
  }

  /** What stands on a line, from its first sign. */
  #written(line: number): string {
    return this.#text.slice(this.#lines.start(line) + this.#lines.indent(line), this.#lines.end(line));
  }

  /** The line at a place among those that have something on them. */
  #at(place: number): number {
    return this.#solid[place] as number;
  }

  /** Whether there is a line at a place, and it stands further in than so much. */
  #isDeeper(place: number, indent: number): boolean {
    return place < this.#solid.length && this.#lines.indent(this.#at(place)) > indent;
  }

  #close(line: number, place: number): void {
    const indent = this.#lines.indent(line);
    const at = this.#frames.findLastIndex((frame) => frame.indent === indent);
    const inner = this.#frames.length - 1 - at;
    if (this.#frames.length === 0 || (at < 0 ? this.#hasOwnClose(place + 1) : this.#isTooMany(place, indent, inner))) {
      this.#mark(line, "extra-close");
      return;
    }
    this.#mark(line, "close");
    // Off by a blank or two from every line that is open: the nearest block.
    const keep = at < 0 ? this.#frames.length - 1 : at;
    for (const frame of this.#frames.splice(keep).slice(1).reverse()) this.#endUnclosed(frame, line, place);
  }

  /** A brace behind a fact closes the block the fact stands in, unless that has one of its own. */
  #closeBehind(line: number, place: number): void {
    this.#endBefore(line, place);
    const top = this.#frames.at(-1);
    const closes = top !== undefined && !containers.has(top.word) && !this.#hasOwnClose(place + 1);
    this.#mark(line, closes ? "close" : "extra-close");
    if (closes) this.#frames.pop();
  }

  /** What follows stands further in than this brace, so it closes nothing: the block it would close goes on. */
  #isTooMany(place: number, indent: number, inner: number): boolean {
    if (!this.#isDeeper(place + 1, indent)) return false;
    return inner > 0 || this.#closedAt(place + 1, indent);
  }

  /** Whether the first line from here on that stands no further in than this is a brace that closes at it. */
  #closedAt(from: number, indent: number): boolean {
    for (let place = from; place < this.#solid.length; place++) {
      if (!this.#isDeeper(place, indent)) return this.#isCloseAt(this.#at(place), indent);
    }
    return false;
  }

  #isCloseAt(line: number, indent: number): boolean {
    return this.#lines.indent(line) === indent && this.#lines.net(line) < 0 && this.#lines.closesFirst(line);
  }

  /** Whether the innermost block has a brace of its own below, before anything opens or closes further out. */
  #hasOwnClose(from: number): boolean {
    const indent = this.#frames.at(-1)?.indent ?? -1;
    for (let place = from; place < this.#solid.length; place++) {
      const line = this.#at(place);
      if (this.#lines.indent(line) > indent || (this.#lines.net(line) === 0 && !this.#lines.closesFirst(line)))
        continue;
      return this.#isCloseAt(line, indent);
    }
    return false;
  }

  #other(line: number, place: number): void {
    this.#endBefore(line, place);
    const net = this.#lines.net(line);
    if (net > 0) this.#mark(line, "open");
    else if (net === 0 && this.#hasLostItsOpen(line, place)) this.#mark(line, "lost-open");
    else return;
    this.#frames.push({ indent: this.#lines.indent(line), word: this.wordAt(line), line, place });
  }

  #endBefore(line: number, place: number): void {
    const [indent, opens] = [this.#lines.indent(line), this.#lines.net(line) > 0];
    for (let top = this.#frames.at(-1); top; top = this.#frames.at(-1)) {
      const outside = indent <= top.indent && (opens || !this.#hasOwnClose(place));
      const word = opens ? this.#lines.word(line) : "";
      const part = structural.has(word) && !mayStandIn(word, top.word);
      if (!outside && !part) return;
      this.#frames.pop();
      this.#endUnclosed(top, line, place);
    }
  }

  /** A brace behind a word that opens no block, with nothing in it, is one too many; any other block is not closed. */
  #endUnclosed(frame: Frame, line: number, place: number): void {
    const empty = place === frame.place + 1;
    if (empty && !opening.has(frame.word) && this.#acts[frame.line] === "open") this.#mark(frame.line, "extra-open");
    else {
      this.#ends.set(line, (this.#ends.get(line) ?? 0) + 1);
      this.#mendings++;
    }
  }

  #mark(line: number, act: Act): void {
    this.#acts[line] = act;
    if (isMending(act)) this.#mendings++;
  }

  /** The lines below stand further in, down to a brace below the word. */
  #hasLostItsOpen(line: number, place: number): boolean {
    const indent = this.#lines.indent(line);
    if (!this.#isDeeper(place + 1, indent) || !opening.has(this.wordAt(line))) return false;
    return !this.#written(line).includes("{") && this.#closedAt(place + 1, indent);
  }
}

/** Whether a part of the file may begin inside a block of this word. */
const mayStandIn = (word: string, outer: string): boolean =>
  outer === "installation" ? word !== "installation" && word !== "way" : outer === "board" && word === "way";

/** A board whose word is misspelt still holds its ways. */
const partMeant = (word: string): string => [...containers].find((part) => isSlipOf(word, part)) ?? word;

const wordOf = (text: string): string => {
  const match = firstWord.exec(text);
  return match?.index === 0 ? match[0] : "";
};
