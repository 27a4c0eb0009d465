/** The questions that are asked of what ways share, and who asks them: numbers for both, and what follows from them. */
import { addBit, type Bits, bitsMeet, hasBit, listBits } from "../memo/bits.ts";
import { closeFitting } from "../memo/close-fitting.ts";

/** A word, or what is worked out of the whole of something: then the outcome counts. */
export type Question = string | ((of: never) => unknown);

/**
 * The questions that can be asked of what ways share, numbered. What is asked stands under its part, as "board" or
 * "supply", and not under the thing itself: so what was asked before an edit means something after it.
 */
export class Questions {
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
