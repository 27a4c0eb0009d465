/**
 * One context beside another that came after it: which questions have another answer now, and where lines that say the
 * same stand today.
 */

import { addBit, addBits, type Bits, bitsMeet, bitsOfBoth } from "../memo/bits.ts";
import { allNames, NameTable } from "./name-table.ts";
import { Names } from "./names.ts";
import type { Question } from "./questions.ts";
import { brokenWords, recordedBy, struckOutTests, wholeList } from "./reads.ts";
import type { SharedParts } from "./shared-parts.ts";
import type { Upstream } from "./three-lines.ts";
import { type Fact, Facts, type WordIn } from "./values.ts";

type Pair = readonly [slot: number, before: object | undefined, after: object | undefined];

interface Head {
  readonly name?: string;
  readonly title: string;
  readonly header: Fact;
}

export class ContextChange {
  readonly #from: SharedParts;
  readonly #to: SharedParts;
  #changed: Bits = [];
  /** How many questions there were when they were last compared. */
  #compared = -1;
  #moved: ReadonlyMap<Fact["segment"], readonly Moved[]> | undefined;
  readonly #isOther: boolean;
  readonly #again = new Map<string, Bits>();

  constructor(from: SharedParts, to: SharedParts) {
    this.#from = from;
    this.#to = to;
    this.#isOther = recordedBy(undefined, () => isOther(from, to));
  }

  /** Whether all that was asked in the one context has the same answer in the other. */
  leaves(reads: Bits): boolean {
    if (this.#isOther) return false;
    const { count } = this.#from.questions;
    if (this.#compared !== count) {
      this.#compared = count;
      this.#changed = recordedBy(undefined, () => this.#findChanged());
    }
    return !bitsMeet(reads, this.#changed);
  }

  /** Who asked anything that has another answer now, of what was asked here: rules that need not run again are not among them. */
  whoAsksAgain(reads: Bits): Bits {
    const changed = bitsOfBoth(this.#changed, reads);
    const { askers } = this.#from.questions;
    const key = `${askers.version} ${changed.join(" ")}`;
    const before = this.#again.get(key);
    if (before) return before;
    const who = askers.whoAsked(changed);
    this.#again.set(key, who);
    return who;
  }

  /** Whether the two can be compared at all. */
  get isOther(): boolean {
    return this.#isOther;
  }

  /** Where a stretch of shared lines stands now, and by how much it moved in its segment. */
  moved(spot: Spot): Moved | undefined {
    this.#moved ??= recordedBy(undefined, () => this.#findMoved());
    return this.#moved.get(spot.segment)?.find(({ start, end }) => start <= spot.start && spot.end <= end);
  }

  #findChanged(): Bits {
    const changed: number[] = [];
    addBits(changed, this.#changedInCommon());
    for (const [slot, before, after] of this.#ownPairs()) {
      if (before === after) continue;
      for (const [question, number] of this.#from.questions.of(slot))
        if (!before || !after || !this.#same(before, after, question)) addBit(changed, number);
    }
    return changed;
  }

  /** What all boards share is compared once for all of them. */
  #changedInCommon(): Bits {
    const [from, to] = [this.#from.common, this.#to.common];
    if (from === to) return [];
    const compared = to.comparedWith(from);
    const { count } = this.#from.questions;
    if (compared.count === count) return compared.changed;
    const changed: number[] = [];
    for (const [slot, before, after] of this.#commonPairs()) {
      if (before === after) continue;
      for (const [question, number] of this.#from.questions.of(slot)) {
        const same = compared.same.get(number) ?? (before && after ? this.#same(before, after, question) : false);
        compared.same.set(number, same);
        if (!same) addBit(changed, number);
      }
    }
    compared.count = count;
    compared.changed = changed;
    return changed;
  }

  /** Every part with what it was and what it is. */
  #ownPairs(): Pair[] {
    return this.#pairsOf(this.#from.ownSlots(), this.#to.ownSlots());
  }

  #commonPairs(): Pair[] {
    return this.#pairsOf(this.#from.common.slots, this.#to.common.slots);
  }

  #pairsOf(before: Iterable<number>, after: Iterable<number>): Pair[] {
    return [...new Set([...before, ...after])].map((slot) => [slot, this.#from.partAt(slot), this.#to.partAt(slot)]);
  }

  #same(before: object, after: object, question: Question): boolean {
    if (typeof question === "function") return sameData(question(before as never), question(after as never));
    if (before instanceof Facts && after instanceof Facts) return this.#sameOfFacts(before, after, question);
    if (before instanceof NameTable && after instanceof NameTable) return this.#sameOfTable(before, after, question);
    if (before instanceof Names && after instanceof Names) return this.#sameOfNames(before, after, question);
    const [one, other] = [before as Head, after as Head];
    if (question === "header") return this.#sameFact(one.header, other.header);
    return question === "title" ? one.title === other.title : one.name === other.name;
  }

  #sameOfFacts(before: Facts, after: Facts, question: string): boolean {
    if (question === wholeList) return this.#sameFacts(before.list, after.list);
    if (question === brokenWords) return sameData(before.broken, after.broken);
    if (question === struckOutTests) return this.#sameFacts(before.struckOut, after.struckOut);
    const word = question as WordIn<Facts["kind"]>;
    return (
      before.broken.includes(word) === after.broken.includes(word) && this.#sameFacts(before.all(word), after.all(word))
    );
  }

  #sameOfTable(before: NameTable<unknown>, after: NameTable<unknown>, question: string): boolean {
    if (question === allNames) return sameData([...before.keys()], [...after.keys()]);
    if (question !== wholeList) return this.#sameItems(before.get(question), after.get(question));
    const [one, other] = [[...before], [...after]];
    return (
      one.length === other.length &&
      one.every(([name, items], index) => name === other[index]?.[0] && this.#sameItems(items, other[index]?.[1]))
    );
  }

  #sameItems(before: readonly unknown[] | undefined, after: readonly unknown[] | undefined): boolean {
    if (before?.length !== after?.length) return false;
    return (before ?? []).every((item, index) => this.#sameItem(item, after?.[index]));
  }

  #sameItem(before: unknown, after: unknown): boolean {
    return isFact(before) && isFact(after) ? this.#sameFact(before, after) : sameData(before, after);
  }

  #sameOfNames(before: Names, after: Names, question: string): boolean {
    if (question === "fields") return this.#sameFacts(before.fields, after.fields);
    if (question === "devices") return this.#sameFacts(before.devices, after.devices);
    if (question === "unclear") return sameData([...before.unclear], [...after.unclear]);
    return before.incomplete === after.incomplete;
  }

  #sameFacts(before: readonly Fact[], after: readonly Fact[]): boolean {
    return before.length === after.length && before.every((fact, index) => this.#sameFact(fact, after[index] as Fact));
  }

  /** Whether two lines say the same, wherever they stand. What has a part of its own is asked there. */
  #sameFact(before: Fact, after: Fact): boolean {
    if (before === after) return true;
    if (before.word !== after.word || textOf(before) !== textOf(after)) return false;
    if (!sameShape(argsOf(before), argsOf(after), after.start - before.start)) return false;
    if (!before.inner || !after.inner) return before.inner === after.inner;
    const slot = this.#from.slotOf(before.inner);
    if (slot !== undefined && slot === this.#to.slotOf(after.inner)) return true;
    return this.#sameBlock(before.inner, after.inner);
  }

  #sameBlock(before: Facts, after: Facts): boolean {
    return (
      this.#sameFacts(before.list, after.list) &&
      sameData(before.broken, after.broken) &&
      this.#sameFacts(before.struckOut, after.struckOut)
    );
  }

  #findMoved(): ReadonlyMap<Fact["segment"], readonly Moved[]> {
    const moved = new Map<Fact["segment"], Moved[]>();
    const add = (before: Fact, after: Fact): void => {
      if (!this.#sameFact(before, after)) return;
      const { segment, start } = before;
      const one = { start, end: start + textOf(before).length, segment: after.segment, by: after.start - start };
      const others = moved.get(segment);
      if (others) others.push(one);
      else moved.set(segment, [one]);
      if (before.inner && after.inner) addFacts(before.inner.list, after.inner.list, add);
    };
    for (const [, before, after] of [...this.#ownPairs(), ...this.#commonPairs()]) {
      if (before instanceof Facts && after instanceof Facts) addFacts(before.list, after.list, add);
      else if (before instanceof NameTable && after instanceof NameTable) addItems(before, after, add);
      else if (before && after && "header" in before && "header" in after)
        add((before as Head).header, (after as Head).header);
    }
    return moved;
  }
}

type Add = (before: Fact, after: Fact) => void;

/** The first of a word beside the first of it, and so on. */
function addFacts(before: readonly Fact[], after: readonly Fact[], add: Add): void {
  const later = Map.groupBy(after, ({ word }) => word);
  for (const [word, facts] of Map.groupBy(before, (fact) => fact.word)) {
    for (const [index, fact] of facts.entries()) {
      const now = later.get(word)?.[index];
      if (now) add(fact, now);
    }
  }
}

function addItems(before: NameTable<unknown>, after: NameTable<unknown>, add: Add): void {
  for (const [name, items] of before) {
    const later = after.get(name);
    for (const [index, item] of items.entries()) {
      const now = later?.[index];
      if (isFact(item) && isFact(now)) add(item, now);
    }
  }
}

/** What changed from one context to another: worked out once for all who ask. */
export const changeBetween = (from: SharedParts, to: SharedParts): ContextChange =>
  to.changeFrom(from, () => new ContextChange(from, to));

interface Spot {
  readonly segment: Fact["segment"];
  readonly start: number;
  readonly end: number;
}

/** A line by where it stood, with where it stands. */
interface Moved extends Spot {
  readonly by: number;
}

/** Contexts that are built otherwise have nothing to compare. */
function isOther(from: SharedParts, to: SharedParts): boolean {
  return (
    from.edition !== to.edition ||
    from.questions !== to.questions ||
    // What asks nothing where there is no supply depends on there being none.
    from.hasSupply !== to.hasSupply ||
    from.upstream.length !== to.upstream.length ||
    from.upstream.some((above, index) => !sameFeeder(above.feeder, to.upstream[index]?.feeder))
  );
}

function sameFeeder(before: Upstream["feeder"], after: Upstream["feeder"]): boolean {
  if (before === after) return true;
  if (!before || !after || before.kind !== after.kind || before.id !== after.id || before.type !== after.type)
    return false;
  const [one, other] = [firstLineOf(before.header), firstLineOf(after.header)];
  return one === other;
}

const firstLineOf = ({ segment, start, end }: Fact): string => {
  const text = segment.text.slice(start, end);
  return text.slice(0, text.search(/[\r\n]|$/));
};

const isFact = (item: unknown): item is Fact => typeof item === "object" && item !== null && "wordEnd" in item;

const textOf = ({ segment, start, end, inner }: Fact): string =>
  inner ? segment.text.slice(start, openOf(segment.text, start, end)) : segment.text.slice(start, end);

/** What stands in a block is compared fact by fact. */
function openOf(text: string, start: number, end: number): number {
  const brace = text.indexOf("{", start);
  return brace < 0 || brace > end ? end : brace;
}

const argsOf = ({ args, provenance, record, corrections, wordEnd }: Fact): unknown => [
  args,
  provenance,
  record,
  corrections,
  { end: wordEnd },
];

const places: ReadonlySet<string> = new Set(["start", "end"]);

/** Equal but for being so much further on in the text. */
function sameShape(before: unknown, after: unknown, by: number): boolean {
  if (before === after) return true;
  if (typeof before !== "object" || typeof after !== "object" || !before || !after) return false;
  const entries = Object.entries(before);
  if (entries.length !== Object.keys(after).length) return false;
  return entries.every(([key, value]) => {
    const other = (after as Record<string, unknown>)[key];
    return places.has(key) ? other === value + by : sameShape(value, other, by);
  });
}

const sameData = (before: unknown, after: unknown): boolean => sameShape(before, after, 0);
