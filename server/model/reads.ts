/**
 * What is asked of things that many share, such as a board's own lines, is noted while a check runs: it need not run
 * again for as long as the answers stay the same. Nothing is declared by hand, and what is kept for several checks
 * passes on what it asked itself.
 */

import { closeFitting } from "../memo/close-fitting.ts";

/** A word, or what is worked out of the whole of something: then the outcome counts. */
export type Question = string | ((of: never) => unknown);

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

/** A set of small numbers. */
export type Bits = readonly number[];

/** Bits of a word, as a power of two: what is asked is noted at every step, so no division is made for it. */
const wordShift = 5;
const perWord = 1 << wordShift;
const inWord = perWord - 1;

export function addBit(bits: number[], bit: number): void {
  const at = bit >> wordShift;
  while (bits.length <= at) bits.push(0);
  bits[at] = (bits[at] as number) | (1 << (bit & inWord));
}

export function addBits(bits: number[], others: Bits): void {
  while (bits.length < others.length) bits.push(0);
  for (let at = 0; at < others.length; at++) bits[at] = (bits[at] as number) | (others[at] as number);
}

export const hasBit = (bits: Bits, bit: number): boolean =>
  (((bits[bit >> wordShift] ?? 0) >> (bit & inWord)) & 1) === 1;

export const bitsOfBoth = (one: Bits, other: Bits): Bits => one.map((word, at) => word & (other[at] ?? 0));

export function bitsMeet(one: Bits, other: Bits): boolean {
  const length = Math.min(one.length, other.length);
  for (let at = 0; at < length; at++) if (((one[at] as number) & (other[at] as number)) !== 0) return true;
  return false;
}

function* listBits(bits: Bits): Generator<number> {
  for (let at = 0; at < bits.length; at++) {
    for (let bit = 0; bit < perWord; bit++) if (((bits[at] as number) >> bit) & 1) yield at * perWord + bit;
  }
}

/**
 * The questions that can be asked of what ways share, numbered. What is asked stands under its part, as "board" or
 * "supply", and not under the thing itself: so what was asked before an edit means something after it.
 */
export class Questions {
  /** How what many places share compares with what it was, question by question. */
  readonly compared = new WeakMap<object, WeakMap<object, Map<number, boolean>>>();
  readonly #slots = new Map<string, number>();
  readonly #numbers: Map<Question, number>[] = [];
  readonly #lists = new Map<string, Bits>();
  readonly #list: { readonly slot: number; readonly question: Question }[] = [];
  /** Who asked what, and who took over whose answers. */
  readonly askers = new Askers();

  slot(part: string): number {
    const before = this.#slots.get(part);
    if (before !== undefined) return before;
    const slot = this.#numbers.push(new Map()) - 1;
    this.#slots.set(part, slot);
    return slot;
  }

  number(slot: number, question: Question): number {
    const numbers = this.#numbers[slot] as Map<Question, number>;
    const before = numbers.get(question);
    if (before !== undefined) return before;
    const number = this.#list.push({ slot, question }) - 1;
    numbers.set(question, number);
    return number;
  }

  /** The same list for all places that asked the same: circuits that are alike ask alike. */
  oneOf(bits: Bits): Bits {
    const key = bits.join(" ");
    const before = this.#lists.get(key);
    if (before) return before;
    const list = closeFitting(bits);
    this.#lists.set(key, list);
    return list;
  }

  at(number: number): { readonly slot: number; readonly question: Question } {
    return this.#list[number] as { slot: number; question: Question };
  }

  /** What was asked of one part so far. */
  of(slot: number): Iterable<readonly [Question, number]> {
    return this.#numbers[slot] ?? [];
  }

  /** How many there are: what was compared before the last was asked says nothing of it. */
  get count(): number {
    return this.#list.length;
  }

  /** Names are a person's own: a list that has met too many of them is begun anew. */
  get isFull(): boolean {
    return [this.#list.length, this.#numbers.length, this.#lists.size].some((count) => count > mostQuestions);
  }
}

const mostQuestions = 3_000;

/** The first numbers are those of answers that are kept in fields of a way that is studied. */
const fieldAskers = 40;

/** Who asks where nobody is to learn it. */
export const nobody = -1;

/**
 * Who asks: a rule, or an answer that is kept and that several rules take over. What each of them ever asked, on whichever
 * way, says which rules an edit can matter to. It is more than one of them asked on one way, and never less.
 */
export class Askers {
  readonly #numbers = new Map<object | string, number>();
  readonly #numbersOfAll = new WeakMap<readonly { readonly id: string }[], readonly number[]>();
  readonly #asked: number[][] = [];
  readonly #took: number[][] = [];
  #current = nobody;
  #version = 0;

  /** Counts what was learnt: what was worked out before says nothing of it. */
  get version(): number {
    return this.#version;
  }

  numberOf(asker: object | string): number {
    const before = this.#numbers.get(asker);
    if (before !== undefined) return before;
    const number = fieldAskers + this.#numbers.size;
    this.#numbers.set(asker, number);
    return number;
  }

  /** The numbers of a list of rules, which is the same for every way. */
  numbersOf(rules: readonly { readonly id: string }[]): readonly number[] {
    const before = this.#numbersOfAll.get(rules);
    if (before) return before;
    const numbers = rules.map(({ id }) => this.numberOf(id));
    this.#numbersOfAll.set(rules, numbers);
    return numbers;
  }

  /** From now on this one asks; returns who did before. */
  enter(asker: number): number {
    const before = this.#current;
    this.#current = asker;
    return before;
  }

  leave(before: number): void {
    this.#current = before;
  }

  /** Works out an answer that is kept: whoever wants it takes it over. */
  answer<T>(asker: number, compute: () => T): T {
    const before = this.enter(asker);
    try {
      return compute();
    } finally {
      this.leave(before);
      this.took(asker);
    }
  }

  took(asker: number): void {
    if (this.#current !== nobody) this.#learn(this.#took, asker);
  }

  asked(question: number): void {
    if (this.#current !== nobody) this.#learn(this.#asked, question);
  }

  askedAll(questions: Bits): void {
    if (this.#current === nobody) return;
    for (const question of listBits(questions)) this.#learn(this.#asked, question);
  }

  #learn(all: number[][], bit: number): void {
    const bits = all[this.#current] ?? [];
    if (hasBit(bits, bit)) return;
    addBit(bits, bit);
    all[this.#current] = bits;
    this.#version++;
  }

  /** All who ever asked one of some questions, by themselves or by taking an answer over. */
  whoAsked(questions: Bits): Bits {
    const who: number[] = [];
    this.#asked.forEach((bits, asker) => {
      if (bitsMeet(bits, questions)) addBit(who, asker);
    });
    for (let grown = true; grown; ) {
      grown = false;
      this.#took.forEach((bits, asker) => {
        if (hasBit(who, asker) || !bitsMeet(bits, who)) return;
        addBit(who, asker);
        grown = true;
      });
    }
    return who;
  }
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
