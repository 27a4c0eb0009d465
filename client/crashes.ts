/** What is done when the server ends by itself: it is started again, and that is reported once. */

/** Ends within this many milliseconds that are too many: what ends it then is what it is given. */
const soon = 3 * 60 * 1000;
const mostRestarts = 4;

interface AfterCrash {
  readonly restarts: boolean;
  /** What is shown to a person; nothing where it was shown already. */
  readonly says?: "restarted" | "given up";
}

export class Crashes {
  readonly #now: () => number;
  #ends: readonly number[] = [];
  #isSaid = false;

  constructor(now: () => number) {
    this.#now = now;
  }

  /** The server has ended and nobody asked it to. */
  crashed(): AfterCrash {
    const now = this.#now();
    this.#ends = [...this.#ends.filter((end) => now - end < soon), now];
    if (this.#ends.length > mostRestarts) return { restarts: false, says: "given up" };
    if (this.#isSaid) return { restarts: true };
    this.#isSaid = true;
    return { restarts: true, says: "restarted" };
  }
}
