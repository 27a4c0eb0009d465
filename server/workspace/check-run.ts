import type { Slices } from "../rules/frame/check-way.ts";
import type { Finding } from "../rules/frame/rule.ts";

/**
 * A check of one file under way, in every schedule the file is part of. Nothing happens between two steps, and it may
 * be left at any of them: what was checked is kept, and another run goes on from there.
 */
export class CheckRun {
  readonly #slices: Slices<readonly Finding[]>;
  readonly #isCurrent: () => boolean;
  #findings: readonly Finding[] | undefined;
  #checked = 0;

  constructor(slices: Slices<readonly Finding[]>, isCurrent: () => boolean) {
    this.#slices = slices;
    this.#isCurrent = isCurrent;
  }

  /** Checks some ways more, as many as are given. Whoever calls decides how many a slice of time has room for. */
  step(ways: number): "more" | "done" | "outdated" {
    if (this.#findings) return "done";
    if (!this.#isCurrent()) return "outdated";
    for (let left = ways; left > 0; left--) {
      const { done, value } = this.#slices.next();
      if (done) {
        this.#findings = value;
        return "done";
      }
      // Rules that looked at many ways have used up the slice of some of them.
      if (value === "rules") return "more";
      this.#checked++;
    }
    return "more";
  }

  /** How many ways had to be checked so far: none where all of it was known. */
  get checked(): number {
    return this.#checked;
  }

  /** What is found, once the run is done. */
  get findings(): readonly Finding[] | undefined {
    return this.#findings;
  }
}
