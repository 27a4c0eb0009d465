/**
 * Division of a file whose braces do not add up, by its indentation. A block's lines stand further in than the line
 * that opens it, and its brace below that line: so each line shows which blocks are still open, and a brace that is
 * lost or too many is one change where it happened, not a fault in all that follows.
 */
import { word as firstWord } from "../../grammar/tokens.ts";
import { containers, opening, structural } from "../../grammar/vocabulary.ts";
import { isSlipOf } from "../text/slip-of.ts";
import { isConflict, type Line } from "./read-lines.ts";
import { rebuild } from "./rebuild.ts";
import type { Segment } from "./segment.ts";
import type { Step } from "./step.ts";

interface Frame {
  readonly indent: number;
  readonly word: string;
  /** The line that opened it, and its place among the lines that have something on them. */
  readonly line: number;
  readonly place: number;
}

/** Nothing where the indentation is no help, or where to read by it takes more than so many changes. */
export function divideByIndent(text: string, lines: readonly Line[], most: number): Segment[] | undefined {
  const reader = new Indentation(text, lines);
  if (!reader.isTrustworthy()) return undefined;
  const steps = reader.steps();
  const changes = steps.reduce((sum, { act, ends }) => sum + ends + (/^(?:lost|extra)/.test(act) ? 1 : 0), reader.left);
  return changes > most ? undefined : rebuild(text, lines, steps, (index) => reader.wordAt(index));
}

class Indentation {
  readonly #text: string;
  readonly #lines: readonly Line[];
  /** Lines that have something on them besides a comment. */
  readonly #solid: readonly number[];
  readonly #steps: Step[];
  #frames: Frame[] = [];

  constructor(text: string, lines: readonly Line[]) {
    this.#text = text;
    this.#lines = lines;
    this.#solid = lines.flatMap((line, index) => (isSolid(text, line) ? [index] : []));
    this.#steps = lines.map(() => ({ act: "plain", ends: 0 }));
  }

  /** Blocks that are still open at the end. */
  get left(): number {
    return this.#frames.length;
  }

  /** Whether each line has one brace to weigh, and the lines below those that open a block stand further in, but for one in four. */
  isTrustworthy(): boolean {
    if (this.#lines.some(({ net, closesFirst }) => Math.abs(net) > 1 || (closesFirst && net >= 0))) return false;
    let openings = 0;
    let deeper = 0;
    this.#solid.forEach((index, place) => {
      const line = this.#line(index);
      const next = this.#solid[place + 1];
      // A brace at once behind may be the one that is too many.
      if (line.net <= 0 || next === undefined || this.#line(next).closesFirst) return;
      openings++;
      if (this.#line(next).indent > line.indent) deeper++;
    });
    return openings > 0 && deeper * 4 >= openings * 3;
  }

  steps(): readonly Step[] {
    this.#solid.forEach((index, place) => {
      const line = this.#line(index);
      if (line.closesFirst) this.#close(index, place, line);
      else if (line.net < 0) this.#closeBehind(index, place, line);
      else this.#other(index, place, line);
    });
    return this.#steps;
  }

  /** The first word of a line; of one that opens a part under a misspelt word, the word that is meant. */
  wordAt(index: number): string {
    const { start, end, word, indent, net } = this.#line(index);
    const written = word || wordOf(this.#text.slice(start + indent, end));
    return net > 0 && !opening.has(written) ? partMeant(written) : written;
  }

  #line(index: number): Line {
    return this.#lines[index] as Line;
  }

  #step(index: number): Step {
    return this.#steps[index] as Step;
  }

  #close(index: number, place: number, { indent }: Line): void {
    const step = this.#step(index);
    const at = this.#frames.findLastIndex((frame) => frame.indent === indent);
    const inner = this.#frames.length - 1 - at;
    if (this.#frames.length === 0 || (at < 0 ? this.#hasOwnClose(place + 1) : this.#isTooMany(place, indent, inner))) {
      step.act = "extra-close";
      return;
    }
    step.act = "close";
    // Off by a blank or two from every line that is open: the nearest block.
    const keep = at < 0 ? this.#frames.length - 1 : at;
    for (const frame of this.#frames.splice(keep).slice(1).reverse()) this.#endUnclosed(frame, step, place);
  }

  /** A brace behind a fact closes the block the fact stands in, unless that has one of its own. */
  #closeBehind(index: number, place: number, line: Line): void {
    this.#endBefore(index, place, line);
    const top = this.#frames.at(-1);
    const closes = top !== undefined && !containers.has(top.word) && !this.#hasOwnClose(place + 1);
    this.#step(index).act = closes ? "close" : "extra-close";
    if (closes) this.#frames.pop();
  }

  /** What follows stands further in than this brace, so it closes nothing: the block it would close goes on. */
  #isTooMany(place: number, indent: number, inner: number): boolean {
    const next = this.#solid[place + 1];
    if (next === undefined || this.#line(next).indent <= indent) return false;
    return inner > 0 || this.#closedAt(place + 1, indent);
  }

  /** Whether the first line from here on that stands no further in than this is a brace that closes at it. */
  #closedAt(place: number, indent: number): boolean {
    for (let at = place; at < this.#solid.length; at++) {
      const line = this.#line(this.#solid[at] as number);
      if (line.indent <= indent) return line.indent === indent && line.closesFirst && line.net < 0;
    }
    return false;
  }

  /** Whether the innermost block has a brace of its own below, before anything opens or closes further out. */
  #hasOwnClose(place: number): boolean {
    const indent = this.#frames.at(-1)?.indent ?? -1;
    for (let at = place; at < this.#solid.length; at++) {
      const line = this.#line(this.#solid[at] as number);
      if (line.indent > indent || (line.net === 0 && !line.closesFirst)) continue;
      return line.closesFirst && line.net < 0 && line.indent === indent;
    }
    return false;
  }

  #other(index: number, place: number, line: Line): void {
    this.#endBefore(index, place, line);
    const step = this.#step(index);
    if (line.net > 0) step.act = "open";
    else if (line.net === 0 && this.#hasLostItsOpen(index, place, line)) step.act = "lost-open";
    else return;
    this.#frames.push({ indent: line.indent, word: this.wordAt(index), line: index, place });
  }

  #endBefore(index: number, place: number, line: Line): void {
    const step = this.#step(index);
    for (let top = this.#frames.at(-1); top; top = this.#frames.at(-1)) {
      const outside = line.indent <= top.indent && (line.net > 0 || !this.#hasOwnClose(place));
      const part = line.net > 0 && structural.has(line.word) && !mayStandIn(line.word, top.word);
      if (!outside && !part) return;
      this.#frames.pop();
      this.#endUnclosed(top, step, place);
    }
  }

  /** A brace behind a word that opens no block, with nothing in it, is one too many; any other block is not closed. */
  #endUnclosed(frame: Frame, step: Step, place: number): void {
    const empty = place === frame.place + 1;
    const opened = this.#step(frame.line);
    if (empty && !opening.has(frame.word) && opened.act === "open") opened.act = "extra-open";
    else step.ends++;
  }

  /** The lines below stand further in, down to a brace below the word. */
  #hasLostItsOpen(index: number, place: number, { indent, end, start }: Line): boolean {
    const next = this.#solid[place + 1];
    if (next === undefined || this.#line(next).indent <= indent || !opening.has(this.wordAt(index))) return false;
    return !this.#text.slice(start, end).includes("{") && this.#closedAt(place + 1, indent);
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

/** Neither blank nor a comment nor the mark of a conflict. */
function isSolid(text: string, { start, end, indent }: Line): boolean {
  const first = text.charCodeAt(start + indent);
  if (start + indent >= end || first === 10 || first === 13 || first === 35) return false;
  return !(indent === 0 && isConflict(text, start));
}
