/** A document after an edit. */
import { word as firstWord } from "../../grammar/tokens.ts";
import { Memo } from "../memo/memo.ts";
import { lineStarts, offsetOf, type Position } from "../text/lines.ts";
import { type Document, type Edit, type Sought, seek, startsOf, textOf } from "./document.ts";
import { sameRole } from "./line-role.ts";
import { type Lines, linesOf } from "./lines.ts";
import { Pieces } from "./pieces.ts";
import { type Draft, finish, isDraftOf, isSame } from "./segment.ts";
import { draftsOf, isByBraces, oneByBraces, type Segment, split } from "./split.ts";
import { lineCount, withWholeBlocks } from "./whole-blocks.ts";

type Range = NonNullable<Edit["range"]>;

/**
 * Applies an edit. One that stays within a block and leaves it whole costs that block; any other divides the file anew
 * by what is known of its lines, and takes over every segment that came out the same.
 */
export function applyEdit(document: Document, edit: Edit): Document {
  if (!edit.range) return reuse(document, split(edit.text));
  const { segments } = document;
  const range = inOrder(edit.range);
  const start = seek(segments, range.start.line);
  const end = seek(segments, range.end.line);
  if (start.index === end.index) {
    const alone =
      withinLine(segments[start.index] as Segment, start.line, range, edit.text) ??
      withinSegment(segments, start, range, edit.text);
    if (alone) return { segments: keepKnown(segments, segments.with(start.index, alone)) };
  }
  return dividedAnew(segments, placeOf(segments, start, range.start), placeOf(segments, end, range.end), edit.text);
}

/** Some editors give the end of a selection first. */
const inOrder = ({ start, end }: Range): Range =>
  start.line > end.line || (start.line === end.line && start.character > end.character)
    ? { start: end, end: start }
    : { start, end };

/** A segment after an edit within one of its lines that the division of the file does not depend on. */
function withinLine(segment: Segment, firstLine: number, range: Range, text: string): Segment | undefined {
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

/** A segment after an edit that leaves it one of the same kind, and its neighbours as they are. */
function withinSegment(
  segments: readonly Segment[],
  { index, line }: Sought,
  range: Range,
  put: string,
): Segment | undefined {
  const before = segments[index] as Segment;
  const text = changedText(before, line, range, put);
  return standsAlone(segments, index, text) ? asOne(before, text) : undefined;
}

function changedText(segment: Segment, firstLine: number, range: Range, text: string): string {
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
  if (!isByBraces(linesIn(segments))) return false;
  balanced.set(segments, true);
  return true;
}

/** What is known of a file's lines, of which segments it was, and how many edits ago. */
interface Measured {
  readonly segments: readonly Segment[];
  readonly lines: Lines;
  readonly age: number;
}

/** Segments that are gone are held no longer than so many edits. */
const oldest = 64;

/** Kept from edit to edit: lines are looked at again only where their segment is another. */
const measured = new Memo<readonly Segment[], Measured>();

function linesIn(segments: readonly Segment[]): Lines {
  const known = measured.get(segments);
  if (known?.segments === segments) return known.lines;
  const lines = known ? measuredAnew(known, segments) : withWholeBlocks(linesOf(textOf({ segments })), segments);
  measured.set(segments, { segments, lines, age: 0 });
  return lines;
}

function measuredAnew(
  { segments: old, lines }: Pick<Measured, "segments" | "lines">,
  segments: readonly Segment[],
): Lines {
  const least = Math.min(old.length, segments.length);
  let head = 0;
  let first = 0;
  while (head < least && old[head] === segments[head]) first += rowsAt(lines, first, segments[head++] as Segment);
  let tail = 0;
  let last = lines.count;
  while (tail < least - head && old.at(-1 - tail) === segments.at(-1 - tail)) {
    tail++;
    last -= rowsAt(lines, last - 1, segments.at(-tail) as Segment);
  }
  const between = segments.slice(head, segments.length - tail);
  const text = textOf({ segments: between });
  if (text === "") return lines.replaced(first, last, text);
  return lines.with(first, last, withWholeBlocks(linesOf(text), between));
}

/** How many rows a segment is that begins or ends with one. */
const rowsAt = (lines: Lines, row: number, segment: Segment): number => (lines.isWhole(row) ? 1 : lineCount(segment));

function keepKnown(before: readonly Segment[], after: readonly Segment[]): readonly Segment[] {
  if (balanced.get(before)) balanced.set(after, true);
  const known = measured.get(before);
  if (known) measured.set(after, { ...known, age: known.age + 1 });
  if (known && known.age >= oldest) linesIn(after);
  return after;
}

/** The changed text as one segment of the same kind, if that is what it still is. */
function asOne(before: Segment | undefined, text: string): Segment | undefined {
  if (!before || before.fault || (before.kind !== "block" && before.kind !== "lines")) return undefined;
  const only = oneByBraces(text);
  return only?.kind === before.kind && only.word === before.word ? only : undefined;
}

/** Where an edit begins or ends: a segment, and the offset there and in the file. */
interface Place {
  readonly index: number;
  readonly offset: number;
  readonly inFile: number;
}

function placeOf(segments: readonly Segment[], { index, line }: Sought, at: Position): Place {
  const segment = segments[index] as Segment;
  const offset = offsetOf(startsOf(segment), segment.text, { ...at, line: at.line - line });
  let inFile = offset;
  for (let before = 0; before < index; before++) inFile += (segments[before] as Segment).text.length;
  return { index, offset, inFile };
}

/** Divides a file whose text is another between two places, without putting its text together. */
function dividedAnew(old: readonly Segment[], from: Place, to: Place, put: string): Document {
  const first = (old[from.index] as Segment).text.slice(0, from.offset);
  const last = (old[to.index] as Segment).text.slice(to.offset);
  const text = new Pieces(textsWith(old, from.index, to.index, first + put + last));
  const grown = put.length - (to.inFile - from.inFile);
  const before = linesIn(old);
  const lines = linesAfter(before, text, grown, from.inFile, to.inFile);
  const segments = adopted(old, text, draftsOf(text, lines), { from: from.inFile, until: to.inFile, grown });
  measured.set(segments, { segments, lines: measuredAnew({ segments: old, lines: before }, segments), age: 0 });
  return { segments };
}

/** The texts of some segments, with another in the place of a few. */
function textsWith(segments: readonly Segment[], first: number, last: number, text: string): readonly string[] {
  const texts: string[] = [];
  for (let index = 0; index < segments.length; index++) {
    if (index === first) texts.push(text);
    if (index < first || index > last) texts.push((segments[index] as Segment).text);
  }
  return texts;
}

function linesAfter(before: Lines, text: Pieces, grown: number, from: number, until: number): Lines {
  // A return that ends the line above may have lost or found its line feed.
  const first = Math.max(before.at(from) - 1, 0);
  const last = before.at(until) + 1;
  const start = before.start(first);
  return before.replaced(first, last, text.slice(start, before.start(last) + grown));
}

/** Where the text of a file is another. */
interface Change {
  readonly from: number;
  /** In the old text. */
  readonly until: number;
  readonly grown: number;
}

/** Takes over every segment outside a change that is what it was where it was, and others by their text. */
function adopted(
  old: readonly Segment[],
  text: Pieces,
  drafts: readonly Draft[],
  { from, until, grown }: Change,
): readonly Segment[] {
  const left: Segment[] = [];
  const fresh: number[] = [];
  let at = 0;
  let start = 0;
  const segments = drafts.map((draft, index) => {
    const wanted = draft.end <= from ? draft.start : draft.start >= until + grown ? draft.start - grown : undefined;
    if (wanted !== undefined) {
      for (; at < old.length && start < wanted; at++) {
        left.push(old[at] as Segment);
        start += (old[at] as Segment).text.length;
      }
      const before = start === wanted ? old[at] : undefined;
      if (before && before.text.length === draft.end - draft.start && isDraftOf(before, draft)) {
        at++;
        start += before.text.length;
        return before;
      }
    }
    fresh.push(index);
    return finish(text, draft);
  });
  takeOver(segments, fresh, [...left, ...old.slice(at)]);
  return segments;
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
  const between = Array.from({ length: segments.length - tail + 1 - head }, (_, index) => head + index);
  takeOver(segments, between, old.slice(head, old.length - tail + 1));
  return { segments };
}

/** A brace that is lost changes what ends a file: what stands between is the same all the same. */
function takeOver(segments: Segment[], places: readonly number[], old: readonly Segment[]): void {
  if (places.length === 0 || old.length === 0) return;
  const byText = Map.groupBy(old, ({ text }) => text);
  for (const index of places) {
    const fresh = segments[index] as Segment;
    const before = byText.get(fresh.text);
    const same = before?.findIndex((one) => isSame(one, fresh)) ?? -1;
    // Once each, in their order.
    if (same >= 0) segments[index] = before?.splice(same, 1)[0] as Segment;
  }
}
