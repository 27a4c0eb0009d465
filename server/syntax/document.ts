import { word as firstWord } from "../../grammar/tokens.ts";
import { Memo } from "../memo/memo.ts";
import type { Position } from "../text/lines.ts";
import { lineStarts, offsetOf, positionOf } from "../text/lines.ts";
import { sameRole } from "./line-role.ts";
import { type Segment, split, splitByBraces } from "./split.ts";

/** A file as its segments. Never changed: an edit gives a new one that shares all segments it did not touch. */
export interface Document {
  readonly segments: readonly Segment[];
}

export const documentOf = (text: string): Document => ({ segments: split(text) });

export const textOf = (document: Document): string => document.segments.map((segment) => segment.text).join("");

/** A change as an editor reports it; without a range the whole text is replaced. */
export interface Edit {
  readonly range?: { readonly start: Position; readonly end: Position };
  readonly text: string;
}

/**
 * Applies an edit. One that stays within a block and leaves it whole costs that block; any other divides the file anew
 * and takes over every segment that came out the same.
 */
export function applyEdit(document: Document, edit: Edit): Document {
  if (!edit.range) return reuse(document, split(edit.text));
  const { segments } = document;
  const start = seek(segments, edit.range.start.line);
  const end = seek(segments, edit.range.end.line);
  if (start.index === end.index) {
    const segment = segments[start.index];
    const inLine = segment && withinLine(segment, start.line, edit.range, edit.text);
    if (inLine) return { segments: keepBalanced(segments, segments.with(start.index, inLine)) };
    const changed = segment && changedText(segment, start.line, edit.range, edit.text);
    const alone = changed !== undefined && standsAlone(segments, start.index, changed);
    const single = alone ? asOne(segment, changed) : undefined;
    if (single) return { segments: markBalanced(segments.with(start.index, single)) };
  }
  const text = textOf(document);
  const starts = lineStarts(text);
  const from = offsetOf(starts, text, edit.range.start);
  const to = offsetOf(starts, text, edit.range.end);
  return reuse(document, split(text.slice(0, from) + edit.text + text.slice(to)));
}

/** A segment after an edit within one of its lines that the division of the file does not depend on. */
function withinLine(
  segment: Segment,
  firstLine: number,
  range: { start: Position; end: Position },
  text: string,
): Segment | undefined {
  if (range.start.line !== range.end.line || /[\r\n]/.test(text)) return undefined;
  const starts = lineStarts(segment.text);
  const line = range.start.line - firstLine;
  const at = { start: starts[line] ?? segment.text.length, end: starts[line + 1] ?? segment.text.length };
  const changed = changedText(segment, firstLine, range, text);
  const grown = changed.length - segment.text.length;
  const [before, after] = [segment.text.slice(at.start, at.end), changed.slice(at.start, at.end + grown)];
  const namesSegment = !firstWord.test(segment.text.slice(0, at.start));
  if (!sameRole(before, after, namesSegment) || segment.mends?.some((mend) => isWithin(mend.at, at))) return undefined;
  const mends = segment.mends?.map((mend) => (mend.at > at.start ? { ...mend, at: mend.at + grown } : mend));
  return { ...segment, text: changed, ...(mends ? { mends } : {}) };
}

/** A brace lost at the start of a line is lost before it. */
const isWithin = (offset: number, { start, end }: { readonly start: number; readonly end: number }): boolean =>
  offset > start && offset < end;

function keepBalanced(before: readonly Segment[], after: readonly Segment[]): readonly Segment[] {
  return balanced.get(before) ? markBalanced(after) : after;
}

interface Sought {
  readonly index: number;
  /** The first line of that segment. */
  readonly line: number;
}

function seek(segments: readonly Segment[], line: number): Sought {
  let first = 0;
  for (let index = 0; index < segments.length; index++) {
    const breaks = segments[index]?.breaks ?? 0;
    if (line < first + breaks || index === segments.length - 1) return { index, line: first };
    first += breaks;
  }
  return { index: 0, line: 0 };
}

function changedText(
  segment: Segment,
  firstLine: number,
  range: { start: Position; end: Position },
  text: string,
): string {
  const starts = lineStarts(segment.text);
  const local = (place: Position) => offsetOf(starts, segment.text, { ...place, line: place.line - firstLine });
  return segment.text.slice(0, local(range.start)) + text + segment.text.slice(local(range.end));
}

/** Whether a segment's new text can be divided without its neighbours: none of them reaches into it, nor it into them. */
function standsAlone(segments: readonly Segment[], index: number, text: string): boolean {
  const before = segments[index - 1];
  if (text === "" || (index < segments.length - 1 && !text.endsWith("\n"))) return false;
  if (before?.fault || (before?.text.endsWith("\r") && text.startsWith("\n"))) return false;
  return isBalanced(segments);
}

/** Divisions that follow from the braces alone. An edit inside a block leaves that as it is. */
const balanced = new Memo<readonly Segment[], true>();

function isBalanced(segments: readonly Segment[]): boolean {
  if (balanced.get(segments)) return true;
  for (const { fault } of segments) if (fault !== undefined) return false;
  // What indentation had to be asked for may show no fault and yet not follow from the braces.
  if (!splitByBraces(textOf({ segments }))) return false;
  markBalanced(segments);
  return true;
}

function markBalanced(segments: readonly Segment[]): readonly Segment[] {
  balanced.set(segments, true);
  return segments;
}

/** The changed text as one segment of the same kind, if that is what it still is. */
function asOne(before: Segment | undefined, text: string): Segment | undefined {
  if (!before || before.fault || (before.kind !== "block" && before.kind !== "lines")) return undefined;
  const [only, ...others] = splitByBraces(text) ?? [];
  const same = only && others.length === 0 && only.kind === before.kind && only.word === before.word;
  return same ? only : undefined;
}

/** Takes over segments that are the same as before: counted from either end, and those between by their text. */
function reuse(before: Document, fresh: readonly Segment[]): Document {
  const old = before.segments;
  const segments = [...fresh];
  let head = 0;
  while (head < segments.length && isSame(old[head], segments[head])) {
    segments[head] = old[head] as Segment;
    head++;
  }
  let tail = 1;
  // A segment is taken over once: a block copied below itself would otherwise be the same object twice.
  while (tail <= Math.min(segments.length, old.length) - head && isSame(old.at(-tail), segments.at(-tail))) {
    segments[segments.length - tail] = old.at(-tail) as Segment;
    tail++;
  }
  takeOver(segments, head, segments.length - tail + 1, old.slice(head, old.length - tail + 1));
  return { segments };
}

/** A brace that is lost changes what ends a file: what stands between is the same all the same. */
function takeOver(segments: Segment[], from: number, until: number, old: readonly Segment[]): void {
  if (from >= until || old.length === 0) return;
  const byText = Map.groupBy(old, ({ text }) => text);
  for (let index = from; index < until; index++) {
    const fresh = segments[index] as Segment;
    const before = byText.get(fresh.text);
    const same = before?.findIndex((one) => isSame(one, fresh)) ?? -1;
    // Once each, in their order.
    if (same >= 0) segments[index] = before?.splice(same, 1)[0] as Segment;
  }
}

const isSame = (a: Segment | undefined, b: Segment | undefined): boolean =>
  a !== undefined &&
  b !== undefined &&
  a.text === b.text &&
  a.kind === b.kind &&
  a.fault === b.fault &&
  a.word === b.word &&
  a.ends === b.ends &&
  sameMends(a.mends, b.mends);

function sameMends(a: Segment["mends"], b: Segment["mends"]): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a.length === b.length && a.every(({ kind, at }, index) => kind === b[index]?.kind && at === b[index]?.at);
}

/** Where segments stand in their file, for those asked about. */
export class Positions {
  readonly #segments: readonly Segment[];
  #before: Positions | undefined;
  #places: Layout | undefined;

  /** Knowing the positions of the document before an edit within a block makes those after it nearly free. */
  constructor(document: Document, before?: Positions) {
    this.#segments = document.segments;
    if (before) this.#before = before.#places ? before : before.#before;
  }

  #all(): Layout {
    if (this.#places) return this.#places;
    const before = this.#before;
    this.#places = before ? layoutOf(this.#segments, before.#segments, before.#places) : layoutOf(this.#segments);
    // Let go of what came before, or every version of a document would stay.
    this.#before = undefined;
    return this.#places;
  }

  #indexOf(segment: Segment): number {
    const index = this.#all().indices.get(segment) ?? -1;
    return this.#segments[index] === segment ? index : -1;
  }

  has(segment: Segment): boolean {
    return this.#indexOf(segment) >= 0;
  }

  /** The place in the file of an offset in a segment. */
  place(segment: Segment, offset: number): Position {
    const at = positionOf(startsOf(segment), offset);
    return { line: at.line + (this.#all().lines[this.#indexOf(segment)] ?? 0), character: at.character };
  }

  /** The offset in the file of an offset in a segment. */
  offset(segment: Segment, offset: number): number {
    return offset + (this.#all().offsets[this.#indexOf(segment)] ?? 0);
  }

  /** The segments that have a part in some lines, without the places of all others. */
  onLines(first: number, last: number): Segment[] {
    const { index, line } = seek(this.#segments, first);
    const found: Segment[] = [];
    let start = line;
    for (let at = index; at < this.#segments.length && start <= last; at++) {
      const segment = this.#segments[at] as Segment;
      found.push(segment);
      start += segment.breaks;
    }
    return found;
  }

  /** The segment a place of the file is in, and the offset there. */
  at(place: Position): { readonly segment: Segment; readonly offset: number } | undefined {
    const { index, line } = seek(this.#segments, place.line);
    const segment = this.#segments[index];
    if (!segment) return undefined;
    return { segment, offset: offsetOf(startsOf(segment), segment.text, { ...place, line: place.line - line }) };
  }
}

interface Layout {
  /** May hold segments of earlier documents too: a hit counts only if the segment is still at its index. */
  readonly indices: Map<Segment, number>;
  readonly lines: Float64Array;
  readonly offsets: Float64Array;
}

/** More changes than this and the map is made anew, which also rids it of segments that are gone. */
const mostChanged = 8;
const mostStale = 1_000;

function layoutOf(segments: readonly Segment[], before: readonly Segment[] = [], kept?: Layout): Layout {
  const lines = new Float64Array(segments.length);
  const offsets = new Float64Array(segments.length);
  let line = 0;
  let offset = 0;
  const changed: number[] = [];
  for (let index = 0; index < segments.length; index++) {
    const segment = segments[index] as Segment;
    if (segment !== before[index]) changed.push(index);
    lines[index] = line;
    offsets[index] = offset;
    line += segment.breaks;
    offset += segment.text.length;
  }
  const reusable =
    kept &&
    before.length === segments.length &&
    changed.length <= mostChanged &&
    kept.indices.size < segments.length + mostStale;
  if (!reusable) return { indices: new Map(segments.map((segment, index) => [segment, index])), lines, offsets };
  for (const index of changed) kept.indices.set(segments[index] as Segment, index);
  return { indices: kept.indices, lines, offsets };
}

const startsKept = new Memo<Segment, readonly number[]>();

function startsOf(segment: Segment): readonly number[] {
  const before = startsKept.get(segment);
  if (before) return before;
  const starts = lineStarts(segment.text);
  startsKept.set(segment, starts);
  return starts;
}
