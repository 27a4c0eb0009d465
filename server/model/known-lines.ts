/**
 * Lines that were read before: schedules say the same things over and over, and what a line says depends on its text and
 * on its block alone. A segment all of whose lines are whole by themselves is put together from them; any other is read
 * as one text.
 */
import { formerWords } from "../../grammar/former-words.ts";
import { endOf } from "../../grammar/lexer.ts";
import { parse, type Statement } from "../../grammar/parser.ts";
import { asInTable, type BlockKind, containers, openedBy, type Provenance, rowOf } from "../../grammar/vocabulary.ts";
import { closeFitting } from "../memo/close-fitting.ts";
import { Recent } from "../memo/recent.ts";
import type { Segment } from "../syntax/split.ts";
import { type BoundArguments, bindArguments } from "./arguments.ts";
import { writtenTwice } from "./twice.ts";
import { type AnyValue, asLiteral, type Fact, Facts, type Span } from "./values.ts";
import { runOfCircuits } from "./way-run.ts";

/** A line with nothing wrong in it, its places counted from its beginning. */
interface Line {
  readonly word: string;
  readonly wordEnd: number;
  readonly end: number;
  readonly bound: BoundArguments;
  /** The arguments it has, which is asked each time it stands somewhere. */
  readonly names: readonly string[];
  readonly opens: BlockKind | undefined;
  /** Whether lines of a block follow it. */
  readonly isOpen: boolean;
}

/** More than a large installation has different lines, and no more than a few megabytes. */
const mostLines = 5_000;

/** More than the ways of a large board. */
const mostAsked = 400;

/** Deeper than blocks of any schedule lie in each other. */
const deepest = 8;

export class KnownLines {
  readonly #of = new Map<BlockKind, Map<string, Line | undefined>>();
  #count = 0;
  /** The ways whose arguments were asked last. */
  readonly asked = new Recent(mostAsked);

  /** What a segment says in a block; nothing where it has to be read as one text. */
  factsOf(segment: Segment, within: BlockKind): Facts | undefined {
    const { kind, fault, mends } = segment;
    if (kind === "open" || kind === "close" || fault || mends) return undefined;
    return new SegmentReader(segment, this).block(within, 0);
  }

  lineOf(kind: BlockKind, text: string): Line | undefined {
    const known = this.#in(kind);
    const before = known.get(text);
    if (before || known.has(text)) return before;
    // A text that is cut out of a file keeps all of the file.
    const own: string = JSON.parse(JSON.stringify(text));
    const line = readLine(kind, own);
    known.set(own, line);
    this.#count++;
    return line;
  }

  #in(kind: BlockKind): Map<string, Line | undefined> {
    if (this.#count >= mostLines) {
      this.#of.clear();
      this.#count = 0;
    }
    const before = this.#of.get(kind);
    if (before) return before;
    const fresh = new Map<string, Line | undefined>();
    this.#of.set(kind, fresh);
    return fresh;
  }
}

/** One line by itself, its block empty; nothing where it is no statement, more than one, or has anything wrong in it. */
function readLine(kind: BlockKind, text: string): Line | undefined {
  const isOpen = text.endsWith("{");
  const { statements, faults } = parse(isOpen ? `${text}\n}` : text);
  const [statement] = statements;
  if (!statement || statements.length > 1 || faults.length > 0 || statement.start > 0) return undefined;
  return (statement.block !== undefined) === isOpen ? lineOf(kind, statement) : undefined;
}

function lineOf(kind: BlockKind, { word, args, end, block }: Statement): Line | undefined {
  const row = rowOf(kind, word.image);
  const isFormer = formerWords.some((former) => former.block === kind && former.former === word.image);
  if (!row || isFormer || containers.has(word.image)) return undefined;
  const isOpen = block !== undefined;
  const opens = openedBy(row);
  if (isOpen !== (opens !== undefined) && !row.blockOptional) return undefined;
  if (isOpen && !opens) return undefined;
  const bound = bindArguments(word, row, args);
  if (bound.problems.length > 0 || (word.image === "way" && runOfCircuits(bound).length > 0)) return undefined;
  const names = Object.keys(bound.args);
  return { word: asInTable(word.image), wordEnd: endOf(word), end, bound, names, opens, isOpen };
}

const none: readonly string[] = [];

const numberSign = 35;

/** A tab, a blank, or what stands before a line end. */
const isBlank = (code: number): boolean => code === 32 || code === 9 || code === 13;

/** A segment whose lines stand in it, and those of them whose arguments were asked for. */
class Place {
  readonly segment: Segment;
  readonly #asked: Recent;
  #facts: PlacedFact[] = [];

  constructor(segment: Segment, asked: Recent) {
    this.segment = segment;
    this.#asked = asked;
  }

  note(fact: PlacedFact): void {
    if (this.#facts.length === 0) this.#asked.add(() => this.#forget());
    this.#facts.push(fact);
  }

  #forget(): void {
    for (const fact of this.#facts) fact.forget();
    this.#facts = [];
  }
}

/**
 * A line where it stands. The arguments of the lines in ways, with their places, are most of all that there is to keep of
 * a schedule, and are made of the line in no time: so they are kept of the ways alone that were asked last. First lines
 * and those of boards are asked of all boards after every key.
 */
class PlacedFact implements Fact {
  readonly word: string;
  readonly start: number;
  readonly end: number;
  readonly inner?: Facts;
  readonly #line: Line;
  readonly #place: Place;
  readonly #isInWay: boolean;
  #args: Fact["args"] | undefined;

  constructor(line: Line, place: Place, { start, end }: Span, inner: Facts | undefined, isInWay: boolean) {
    this.word = line.word;
    this.start = start;
    this.end = end;
    if (inner) this.inner = inner;
    this.#line = line;
    this.#place = place;
    this.#isInWay = isInWay;
  }

  get args(): Fact["args"] {
    if (this.#args === undefined) {
      this.#args = argumentsAt(this.#line, this.start);
      if (this.#isInWay) this.#place.note(this);
    }
    return this.#args;
  }

  get provenance(): Provenance {
    return this.#line.bound.provenance;
  }

  get segment(): Segment {
    return this.#place.segment;
  }

  get wordEnd(): number {
    return this.start + this.#line.wordEnd;
  }

  forget(): void {
    this.#args = undefined;
  }
}

/** Goes through the lines of a segment, and stops at the first that is not known by itself. */
class SegmentReader {
  readonly #text: string;
  readonly #place: Place;
  readonly #lines: KnownLines;
  /** Whether the block round the next line is a way, or lies in one. */
  #isInWay = false;
  /** Where the next line begins, and where the one that was read last stands without the blanks round it. */
  #next = 0;
  #start = 0;
  #end = 0;

  constructor(segment: Segment, lines: KnownLines) {
    this.#text = segment.text;
    this.#place = new Place(segment, lines.asked);
    this.#lines = lines;
  }

  block(kind: BlockKind, depth: number): Facts | undefined {
    const list: Fact[] = [];
    const struckOut: Fact[] = [];
    for (;;) {
      const text = this.#line();
      const isLast = text === undefined || text === "}";
      if (isLast && (text === undefined) !== (depth === 0)) return undefined;
      if (isLast) return new Facts(kind, closeFitting(list), none, closeFitting(struckOut));
      const line = this.#lines.lineOf(kind, text);
      const fact = line && this.#fact(line, depth);
      if (!fact) return undefined;
      if (fact.inner?.list.some(({ word }) => word === "struck-out")) struckOut.push(fact);
      else if (writtenTwice(kind, fact, list) !== undefined) return undefined;
      else list.push(fact);
    }
  }

  /** The next line that says anything. */
  #line(): string | undefined {
    const text = this.#text;
    while (this.#next < text.length) {
      const found = text.indexOf("\n", this.#next);
      let end = found < 0 ? text.length : found;
      let start = this.#next;
      this.#next = end + 1;
      while (start < end && isBlank(text.charCodeAt(start))) start++;
      while (end > start && isBlank(text.charCodeAt(end - 1))) end--;
      if (start === end || text.charCodeAt(start) === numberSign) continue;
      this.#start = start;
      this.#end = end;
      return text.slice(start, end);
    }
    return undefined;
  }

  #fact(line: Line, depth: number): Fact | undefined {
    const start = this.#start;
    const { opens, isOpen } = line;
    const isInWay = this.#isInWay;
    const inner = isOpen && opens ? this.#inner(opens, depth) : opens && new Facts(opens, [], none);
    if (isOpen && !inner) return undefined;
    const end = isOpen ? this.#end : start + line.end;
    const fact: Fact = new PlacedFact(line, this.#place, { start, end }, inner, isInWay);
    const { record, corrections } = line.bound;
    if (record === undefined && corrections.length === 0) return fact;
    return {
      ...asLiteral(fact),
      ...(record === undefined ? {} : { record }),
      ...(corrections.length > 0 ? { corrections: corrections.map((one) => moved(one, start)) } : {}),
    };
  }

  #inner(kind: BlockKind, depth: number): Facts | undefined {
    if (depth >= deepest) return undefined;
    const outer = this.#isInWay;
    this.#isInWay ||= kind === "way";
    const inner = this.block(kind, depth + 1);
    this.#isInWay = outer;
    return inner;
  }
}

/** The arguments of a line that begins there. */
function argumentsAt({ names, bound }: Line, by: number): Record<string, AnyValue | AnyValue[]> {
  const args: Record<string, AnyValue | AnyValue[]> = {};
  for (const name of names) {
    const value = bound.args[name];
    if (value !== undefined)
      args[name] = Array.isArray(value) ? value.map((one) => valueAt(one, by)) : valueAt(value, by);
  }
  return args;
}

function valueAt(value: AnyValue, by: number): AnyValue {
  if (!("legs" in value)) return moved(value, by);
  const legs = value.legs.map(({ length, to }) => ({ length: moved(length, by), to: moved(to, by) }));
  return { ...moved(value, by), from: moved(value.from, by), legs };
}

const moved = <S extends Span>(span: S, by: number): S => ({ ...span, start: span.start + by, end: span.end + by });
