/**
 * Stands in for `server/memo/memo.ts` in the copy that mutants are tried in: what was worked out for one test, or with one
 * mutant awake, is not given to the next. Else only the first test would come by what lies in tables and editions, and a
 * mutant would live in the answers that were kept without it.
 */

/** Counted up before each test, and before each time that one is run again. */
const now = (): number => (globalThis as { mutantsEpoch?: number }).mutantsEpoch ?? 0;

export class Memo<K extends object, V> {
  #of = now();
  #kept = new WeakMap<K, { readonly value: V }>();

  #fresh(): WeakMap<K, { readonly value: V }> {
    if (this.#of !== now()) {
      this.#of = now();
      this.#kept = new WeakMap();
    }
    return this.#kept;
  }

  get(of: K): V | undefined {
    return this.#fresh().get(of)?.value;
  }

  set(of: K, value: V): void {
    this.#fresh().set(of, { value });
  }

  of(of: K, compute: (of: K) => V): V {
    const known = this.#fresh().get(of);
    if (known) return known.value;
    const value = compute(of);
    this.set(of, value);
    return value;
  }
}
