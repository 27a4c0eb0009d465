/**
 * What is asked of things that many share, such as a board's own lines, is noted while a check runs: it need not run
 * again for as long as the answers stay the same. Nothing is declared by hand, and what is kept for several checks
 * passes on what it asked itself.
 */

import { addBit, addBits, type Bits, listBits } from "../memo/bits.ts";
import { closeFitting } from "../memo/close-fitting.ts";
import type { Question, Questions } from "./questions.ts";

/** Asked of facts: every one of them, the words that could not be understood, the tests that do not count. */
export const wholeList = "*";
export const brokenWords = "*broken";
export const struckOutTests = "*struck-out";

export interface Recorder {
  note(of: object, question: Question): void;
  /** The same of the facts of a way: most ways concern nobody but who is checking them, and they are asked most. */
  noteWay(facts: object, question: Question): void;
  /** What was noted is noted by another too. */
  passOn(to: Recorder): void;
}

/** Who notes what is asked just now. Work is never interrupted while somebody does. */
export let recorder: Recorder | undefined;

/** Runs something while `inner` notes what it asks; whoever noted before hears of it afterwards. */
export function recordedBy<T>(inner: Recorder | undefined, run: () => T): T {
  const outer = recorder;
  if (inner === outer) return run();
  recorder = inner;
  try {
    return run();
  } finally {
    recorder = outer;
    if (outer) inner?.passOn(outer);
  }
}

/** From now on this one notes; returns who did before. Where many are asked in turn, a function for each would be felt. */
export function noteFor(next: Recorder | undefined): Recorder | undefined {
  const before = recorder;
  recorder = next;
  return before;
}

/** What was asked, for whoever takes the answer over. */
interface Asked {
  passOn(to: Recorder): void;
}

interface Log extends Recorder {
  readonly isEmpty: boolean;
  /** As it is kept with an answer. */
  readonly kept: Asked;
}

/** What was asked, as it was asked. */
export class ReadLog implements Log {
  readonly #own: ReadonlySet<object> | undefined;
  #read: Map<object, Set<Question>> | undefined;

  /** What is asked of `own` is not noted: it never changes without a new one who asks. */
  constructor(own?: ReadonlySet<object>) {
    this.#own = own;
  }

  note(of: object, question: Question): void {
    if (this.#own?.has(of)) return;
    this.#read ??= new Map();
    const before = this.#read.get(of);
    if (before) before.add(question);
    else this.#read.set(of, new Set([question]));
  }

  noteWay(facts: object, question: Question): void {
    this.note(facts, question);
  }

  passOn(to: Recorder): void {
    if (this.#read) for (const [of, questions] of this.#read) for (const one of questions) to.note(of, one);
  }

  get isEmpty(): boolean {
    return this.#read === undefined;
  }

  /** Most answers asked one thing or two: in a row they take a tenth of the room. */
  get kept(): Asked {
    return new AskedInARow(
      [...(this.#read ?? [])].flatMap(([of, questions]) => [...questions].flatMap((one) => [of, one])),
    );
  }
}

/** Each thing with what was asked of it behind it. */
class AskedInARow implements Asked {
  readonly #row: readonly (object | Question)[];

  constructor(row: readonly (object | Question)[]) {
    this.#row = closeFitting(row);
  }

  passOn(to: Recorder): void {
    for (let at = 0; at < this.#row.length; at += 2) to.note(this.#row[at] as object, this.#row[at + 1] as Question);
  }
}

/** An answer that is kept, with what was asked to work it out. */
export interface Recorded<T> {
  readonly value: T;
  readonly reads?: Asked;
}

/** Works an answer out and notes what it asks, for all who take it over later. */
export function recordedAnswer<T>(reads: Log, compute: () => T): Recorded<T> {
  const outer = recorder;
  recorder = reads;
  try {
    const value = compute();
    return reads.isEmpty ? { value } : { value, reads: reads.kept };
  } finally {
    recorder = outer;
  }
}

/** An answer that was kept, for whoever asks now. */
export function answerOf<T>({ value, reads }: Recorded<T>): T {
  if (recorder && reads) {
    reads.passOn(recorder);
    if (reads instanceof Reads) reads.askAgain();
  }
  return value;
}

/** Things that are shared, each as a part with a number. */
export interface Parts {
  readonly questions: Questions;
  slotOf(of: object): number | undefined;
  /** Whether these are the facts of a way that feeds this place: those of another way are no part. */
  isFeeder(facts: object): boolean;
  partAt(slot: number): object | undefined;
}

/** What was asked of the parts of one place. */
export class Reads implements Log {
  readonly #parts: Parts;
  readonly #own: object | undefined;
  readonly #bits: number[] = [];

  /** What is asked of `own` is not noted: it never changes without a new one who asks. */
  constructor(parts: Parts, own?: object) {
    this.#parts = parts;
    this.#own = own;
  }

  get bits(): Bits {
    return this.#bits;
  }

  get isEmpty(): boolean {
    return this.#bits.length === 0;
  }

  get kept(): this {
    return this;
  }

  add(bits: Bits): void {
    addBits(this.#bits, bits);
  }

  note(of: object, question: Question): void {
    if (of === this.#own) return;
    const slot = this.#parts.slotOf(of);
    // Made of what was noted already.
    if (slot === undefined) return;
    const number = this.#parts.questions.number(slot, question);
    addBit(this.#bits, number);
    this.#parts.questions.askers.asked(number);
  }

  noteWay(facts: object, question: Question): void {
    if (facts !== this.#own && this.#parts.isFeeder(facts)) this.note(facts, question);
  }

  /** Whoever takes an answer over has asked what it was made of. */
  askAgain(): void {
    this.#parts.questions.askers.askedAll(this.#bits);
  }

  passOn(to: Recorder): void {
    if (to instanceof Reads && to.#parts === this.#parts) {
      addBits(to.#bits, this.#bits);
      return;
    }
    for (const number of listBits(this.#bits)) {
      const { slot, question } = this.#parts.questions.at(number);
      const part = this.#parts.partAt(slot);
      if (part) to.note(part, question);
    }
  }
}
