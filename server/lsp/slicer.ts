/**
 * Long work in short slices. Between two of them the server takes in what has arrived: a cancellation, a character that
 * was typed, a question that can be answered at once. However many checks are under way, one slice of one of them is
 * worked on at a time.
 */
import type { CheckRun } from "../workspace/check-run.ts";
import type { Runtime } from "./runtime.ts";

/** Milliseconds: a screen is drawn anew every 16. */
const longestSlice = 8;
type CheckEnd = "done" | "outdated" | "unwanted" | "enough";

/** What is told of a check that takes its time. */
interface Watcher {
  /** Whether anybody still waits for it. */
  isWanted(): boolean;
  /** Whether what is checked so far will do for now. */
  isEnough?(): boolean;
  /** After each slice, with the number of ways that had to be checked so far. */
  progressed?(ways: number): void;
}

export class Slicer {
  readonly #runtime: Pick<Runtime, "soon" | "now">;
  readonly #waiting: (() => void)[] = [];
  #scheduled = false;

  constructor(runtime: Pick<Runtime, "soon" | "now">) {
    this.#runtime = runtime;
  }

  async run(check: CheckRun, watcher: Watcher): Promise<CheckEnd> {
    for (;;) {
      const end = this.#runtime.now() + longestSlice;
      do {
        // The first ways of a start take milliseconds each: the clock is asked after every one.
        const state = check.step(1);
        if (state !== "more") return state;
      } while (this.#runtime.now() < end);
      watcher.progressed?.(check.checked);
      if (watcher.isEnough?.()) return "enough";
      await this.#turn();
      if (!watcher.isWanted()) return "unwanted";
    }
  }

  /** Goes through all steps, for as long as somebody waits for them. */
  async through(steps: Iterable<unknown>, isWanted: () => boolean): Promise<void> {
    let end = this.#runtime.now() + longestSlice;
    for (const _ of steps) {
      if (this.#runtime.now() < end) continue;
      await this.#turn();
      if (!isWanted()) return;
      end = this.#runtime.now() + longestSlice;
    }
  }

  /** Comes back once the messages at hand are dealt with, and those who waited before have had their slice. */
  #turn(): Promise<void> {
    return new Promise((resolve) => {
      this.#waiting.push(resolve);
      this.#schedule();
    });
  }

  #schedule(): void {
    if (this.#scheduled || this.#waiting.length === 0) return;
    this.#scheduled = true;
    this.#runtime.soon(() => {
      this.#scheduled = false;
      this.#waiting.shift()?.();
      this.#schedule();
    });
  }
}
