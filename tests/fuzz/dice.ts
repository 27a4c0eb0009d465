/** Choices that a seed repeats. */
import { random } from "../helpers/random.ts";

export class Dice {
  readonly next: () => number;

  constructor(seed: number) {
    this.next = random(seed);
  }

  /** A whole number below another. */
  below(limit: number): number {
    return Math.floor(this.next() * limit);
  }

  chance(share: number): boolean {
    return this.next() < share;
  }

  pick<T>(items: readonly T[]): T {
    return items[this.below(items.length)] as T;
  }

  times<T>(count: number, make: () => T): T[] {
    return Array.from({ length: count }, make);
  }
}
