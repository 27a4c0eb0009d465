import type { Accepts, Param, Params } from "../../grammar/params.ts";
import type { Provenance, Vocabulary } from "../../grammar/vocabulary.ts";
import type { Segment } from "../syntax/split.ts";
import type { Question } from "./questions.ts";
import { brokenWords, recorder, struckOutTests, wholeList } from "./reads.ts";

/** Offsets within a segment's text. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface Val<T> extends Span {
  readonly value: T;
}

/** A number with a unit, in the base unit of its kind: Ω, A, V, m, mm² (size of a conductor), mm, s, °C, W. */
export interface Quantity extends Span {
  readonly value: number;
  /** `>` and `<` are bounds, never values. */
  readonly sign: "=" | ">" | "<";
  /** The unit it was written in. */
  readonly unit: string;
  /** Decimals as written, which tell how finely it was read. */
  readonly decimals: number;
}

/** What was not measured, and why. */
export interface Absent extends Span {
  readonly absent: "LIM" | "N/A";
  readonly why?: string;
}

export type Reading = Quantity | Absent;

/** A type and rated current written together: B32. */
export interface Shorthand extends Span {
  readonly curve: "B" | "C" | "D";
  readonly rating: number;
}

export interface Leg {
  readonly length: Quantity;
  readonly to: Val<string>;
}

/** `A 7 m S1 6 m S2`: from the board to a point and on. */
export interface Path extends Span {
  readonly from: Val<string>;
  readonly legs: readonly Leg[];
}

type ValueOf<A extends Accepts> = A extends { kind: "quantity"; reading: infer R }
  ? R extends true
    ? Reading
    : Quantity
  : A extends { kind: "choice"; choices: infer C; absent: infer N }
    ? N extends true
      ? Val<keyof C & string> | Absent
      : Val<keyof C & string>
    : A extends { kind: "shorthand" }
      ? Shorthand
      : A extends { kind: "path" }
        ? Path
        : A extends { kind: "count" | "multiple" }
          ? Val<number>
          : Val<string>;

type Filled<P> =
  P extends Param<infer A, boolean, infer M> ? (M extends true ? readonly ValueOf<A>[] : ValueOf<A>) : never;

/** The typed arguments of a word, derived from its row in the vocabulary. */
type Args<P extends Params> = {
  readonly [N in keyof P as P[N] extends Param<Accepts, false> ? N : never]: Filled<P[N]>;
} & {
  readonly [N in keyof P as P[N] extends Param<Accepts, false> ? never : N]?: Filled<P[N]>;
};

export type AnyValue = Val<string> | Val<number> | Quantity | Absent | Shorthand | Path;

/** What a reading was before it was corrected. */
export interface Correction extends Span {
  readonly was: string;
  readonly why: string;
}

/** A statement that was understood. */
export interface Fact<A = Readonly<Record<string, AnyValue | readonly AnyValue[] | undefined>>> extends Span {
  readonly word: string;
  readonly wordEnd: number;
  readonly args: A;
  /** Where its readings came from. Without a word they were measured. */
  readonly provenance: Provenance;
  readonly record?: string;
  readonly corrections?: readonly Correction[];
  readonly segment: Segment;
  readonly inner?: Facts;
  /** Some of its line could not be read, which is reported: what it does not say may be what was meant. */
  readonly misread?: true;
}

/** A fact to be changed: one that answers when it is asked has nothing that could be spread. */
export const asLiteral = <F extends Fact>(fact: F): F => ({
  ...fact,
  word: fact.word,
  args: fact.args,
  provenance: fact.provenance,
  segment: fact.segment,
  wordEnd: fact.wordEnd,
});

export type AnyBlock = keyof Vocabulary;
type Rows<B extends AnyBlock> = Vocabulary[B];
export type WordIn<B extends AnyBlock> = keyof Rows<B> & string;
export type FactOf<B extends AnyBlock, W extends WordIn<B>> = Rows<B>[W] extends { params: infer P }
  ? P extends Params
    ? Fact<Args<P>>
    : never
  : never;

/** Blocks whose facts others are judged by: what is asked of them is noted. */
const sharedKinds: ReadonlySet<AnyBlock> = new Set(["installation", "board", "supply", "instrument", "way"]);

/** Stands among the broken words of a block in which the marks of a merge conflict were left: both sides are read. */
export const conflictMark = "<<<<<<<";

/** The facts of one block, by word. */
export class Facts<B extends AnyBlock = AnyBlock> {
  readonly kind: B;
  readonly #list: readonly Fact[];
  readonly #broken: readonly string[];
  readonly #struckOut: readonly Fact[];
  readonly #isShared: boolean;
  readonly #isWay: boolean;

  constructor(kind: B, list: readonly Fact[], broken: readonly string[], struckOut: readonly Fact[] = []) {
    this.kind = kind;
    this.#list = list;
    this.#broken = broken;
    this.#struckOut = struckOut;
    this.#isShared = sharedKinds.has(kind);
    this.#isWay = kind === "way";
  }

  #note(question: Question): void {
    if (this.#isWay) recorder?.noteWay(this, question);
    else recorder?.note(this, question);
  }

  get list(): readonly Fact[] {
    if (recorder !== undefined && this.#isShared) this.#note(wholeList);
    return this.#list;
  }

  /** Words that stand here but could not be understood: what they would have said is unknown, not missing. */
  get broken(): readonly string[] {
    if (recorder !== undefined && this.#isShared) this.#note(brokenWords);
    return this.#broken;
  }

  /** Tests that are kept and do not count: they are in no list. */
  get struckOut(): readonly Fact[] {
    if (recorder !== undefined && this.#isShared) this.#note(struckOutTests);
    return this.#struckOut;
  }

  one<W extends WordIn<B>>(word: W): FactOf<B, W> | undefined {
    if (recorder !== undefined && this.#isShared) this.#note(word);
    return firstOf(this.#list, word) as FactOf<B, W> | undefined;
  }

  all<W extends WordIn<B>>(word: W): readonly FactOf<B, W>[] {
    if (recorder !== undefined && this.#isShared) this.#note(word);
    return allOf(this.#list, word) as readonly FactOf<B, W>[];
  }

  /** Whether the word stands here, understood or not. */
  has(word: WordIn<B>): boolean {
    if (recorder !== undefined && this.#isShared) this.#note(word);
    return firstOf(this.#list, word) !== undefined || this.#broken.includes(word);
  }

  /** Whether a line of this word stands here that could not be understood. Other words of the block are not asked. */
  isUnread(word: WordIn<B>): boolean {
    if (recorder !== undefined && this.#isShared) this.#note(word);
    return this.#broken.includes(word);
  }
}

// Every check asks for several words, so these are plain loops: a closure for each question is felt on a large file.
function firstOf(list: readonly Fact[], word: string): Fact | undefined {
  for (const fact of list) if (fact.word === word) return fact;
  return undefined;
}

const none: readonly Fact[] = [];

function allOf(list: readonly Fact[], word: string): readonly Fact[] {
  let found: Fact[] | undefined;
  for (const fact of list) {
    if (fact.word !== word) continue;
    if (found) found.push(fact);
    else found = [fact];
  }
  return found ?? none;
}

export const isAbsent = (value: AnyValue | undefined): value is Absent => value !== undefined && "absent" in value;

/** `N/A`: a test that nobody made, and that should not have been needed. */
export const isCalledNotApplicable = (value: AnyValue | undefined): boolean =>
  isAbsent(value) && value.absent === "N/A";

const isReading = (value: AnyValue | readonly AnyValue[]): value is Reading => "sign" in value || "absent" in value;

/** What a line states under a name, where that can be read off a meter or be absent. */
export function readingAt(fact: Fact | undefined, name = "value"): Reading | undefined {
  const value = fact?.args[name];
  return value !== undefined && isReading(value) ? value : undefined;
}

/** Whether these are the facts of such a block. */
export const isOfKind = <B extends AnyBlock>(facts: Facts, kind: B): facts is Facts<B> => facts.kind === kind;

/** Blocks of several kinds have some words alike: for these, the facts of one are read as those of another. */
export const asBlock = <B extends AnyBlock>(facts: Facts): Facts<B> => facts as Facts<B>;

/** The block a line opens, where it is of this kind. */
export const innerOf = <B extends AnyBlock>(fact: Fact | undefined, kind: B): Facts<B> | undefined =>
  fact?.inner && isOfKind(fact.inner, kind) ? fact.inner : undefined;

/** The quantity of a reading; nothing if it was not measured. */
export const quantityOf = (value: Reading | undefined): Quantity | undefined =>
  value && !isAbsent(value) ? value : undefined;

/** The exact number of a reading; nothing if it was not measured or is off scale. */
export function exact(value: Reading | undefined): number | undefined {
  const quantity = quantityOf(value);
  return quantity && quantity.sign === "=" ? quantity.value : undefined;
}
