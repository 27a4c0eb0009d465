/** What was worked out last, each with what forgets it: so many are kept, and the oldest goes as another comes. */
export class Recent {
  readonly #most: number;
  readonly #forget: (() => void)[] = [];

  constructor(most: number) {
    this.#most = most;
  }

  add(forget: () => void): void {
    this.#forget.push(forget);
    if (this.#forget.length > this.#most) this.#forget.shift()?.();
  }
}
