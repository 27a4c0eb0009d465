/**
 * What is worked out of a thing lies with the thing, and goes when it goes: no module keeps anything. A memo is declared
 * once and holds nothing; its values are in the things themselves, where no copy of a thing takes them along.
 */

/** What a base class returns is what the fields of the class are added to: here the thing itself. */
const Given = function given(of: object): object {
  return of;
} as unknown as new (
  of: object,
) => object;

const none: readonly unknown[] = [];

/**
 * Private fields that any object can have: half the time of a WeakMap, and no work for the collector. Of most things one
 * answer is kept, which needs nothing but the fields; others stand in a row, each behind its memo.
 */
class Drawer extends Given {
  readonly #memo: object;
  #value: unknown;
  #others = none;

  private constructor(of: object, memo: object, value: unknown) {
    super(of);
    this.#memo = memo;
    this.#value = value;
  }

  /** Where an answer stands: 0 for the first, less where there is none. */
  static placeOf(of: object, memo: object): number {
    if (!(#memo in of)) return -1;
    if (of.#memo === memo) return 0;
    const others = of.#others;
    for (let at = 0; at < others.length; at += 2) if (others[at] === memo) return at + 1;
    return -1;
  }

  static at(of: object, place: number): unknown {
    return place === 0 ? (of as Drawer).#value : (of as Drawer).#others[place];
  }

  static put(of: object, memo: object, place: number, value: unknown): void {
    if (!(#memo in of)) new Drawer(of, memo, value);
    else if (place === 0) of.#value = value;
    else if (place > 0) (of.#others as unknown[])[place] = value;
    // A list that grows by itself would take room for more than ever come.
    else of.#others = of.#others.concat([memo, value]);
  }
}

/** A place in each thing of a kind for what was worked out of it. */
export class Memo<K extends object, V> {
  get(of: K): V | undefined {
    const place = Drawer.placeOf(of, this);
    return place < 0 ? undefined : (Drawer.at(of, place) as V);
  }

  set(of: K, value: V): void {
    Drawer.put(of, this, Drawer.placeOf(of, this), value);
  }

  /** What is kept, or else what is worked out now and kept from then on. */
  of(of: K, compute: (of: K) => V): V {
    const place = Drawer.placeOf(of, this);
    if (place >= 0) return Drawer.at(of, place) as V;
    const fresh = compute(of);
    this.set(of, fresh);
    return fresh;
  }
}
