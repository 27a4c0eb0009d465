import type { Question } from "./questions.ts";
import { recorder, wholeList } from "./reads.ts";

/** Asked of a table: which names there are, whatever stands behind them. */
export const allNames = "*names";

/** What stands behind each name. A name that is written twice has both. */
export class NameTable<T> implements ReadonlyMap<string, readonly T[]> {
  readonly #items: ReadonlyMap<string, readonly T[]>;

  constructor(items: readonly T[], nameOf: (item: T) => string) {
    this.#items = Map.groupBy(items, nameOf);
  }

  #asked(question: Question): ReadonlyMap<string, readonly T[]> {
    recorder?.note(this, question);
    return this.#items;
  }

  get(name: string): readonly T[] | undefined {
    return this.#asked(name).get(name);
  }

  has(name: string): boolean {
    return this.#asked(name).has(name);
  }

  get size(): number {
    return this.#asked(allNames).size;
  }

  keys(): MapIterator<string> {
    return this.#asked(allNames).keys();
  }

  values(): MapIterator<readonly T[]> {
    return this.#asked(wholeList).values();
  }

  entries(): MapIterator<[string, readonly T[]]> {
    return this.#asked(wholeList).entries();
  }

  forEach(visit: (items: readonly T[], name: string, table: ReadonlyMap<string, readonly T[]>) => void): void {
    for (const [name, items] of this.entries()) visit(items, name, this);
  }

  [Symbol.iterator](): MapIterator<[string, readonly T[]]> {
    return this.entries();
  }
}
