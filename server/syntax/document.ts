import { Memo } from "../memo/memo.ts";
import type { Position } from "../text/lines.ts";
import { lineStarts, offsetOf, positionOf } from "../text/lines.ts";
import { type Segment, split } from "./split.ts";

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

/** A segment that a line is in. */
export interface Sought {
  readonly index: number;
  /** The first line of that segment. */
  readonly line: number;
}

export function seek(segments: readonly Segment[], line: number): Sought {
  let first = 0;
  for (let index = 0; index < segments.length; index++) {
    const breaks = segments[index]?.breaks ?? 0;
    if (line < first + breaks || index === segments.length - 1) return { index, line: first };
    first += breaks;
  }
  return { index: 0, line: 0 };
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

/** Where the lines of a segment begin in it. */
export function startsOf(segment: Segment): readonly number[] {
  const before = startsKept.get(segment);
  if (before) return before;
  const starts = lineStarts(segment.text);
  startsKept.set(segment, starts);
  return starts;
}
