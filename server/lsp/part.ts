/**
 * A part of the program that no first finding waits for: it is loaded when the first request needs it, before that is
 * worked on, so that the work itself stays in one piece.
 */
export class Part<T> {
  readonly #load: () => Promise<T>;
  #found: { readonly part: T } | undefined;

  constructor(load: () => Promise<T>) {
    this.#load = load;
  }

  get isLoaded(): boolean {
    return this.#found !== undefined;
  }

  async load(): Promise<void> {
    this.#found ??= { part: await this.#load() };
  }

  /** The part itself. To be asked by work that named it among its needs, and by nothing else. */
  get now(): T {
    if (!this.#found) throw new Error("A part was used before it was loaded.");
    return this.#found.part;
  }
}
