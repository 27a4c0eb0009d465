import { AlikeAnswers } from "../memo/alike.ts";
import { Recent } from "../memo/recent.ts";
import { KnownLines } from "./known-lines.ts";
import { Questions } from "./questions.ts";

/** In more schedules than these a file is checked anew. */
const mostSchedules = 5;

/** A person works on one board and looks at its neighbours; what stands above them is asked again and again. */
const mostRecent = 8;

/**
 * What schedules that are checked together share: which questions were asked, so that what was asked in one place can be
 * compared with another, and what circuits alike have in common. Whoever checks makes one and lets go of it; two of them
 * have nothing in common but the published tables.
 */
export class Engine {
  #questions = new Questions();
  readonly alike = new AlikeAnswers();
  readonly lines = new KnownLines();
  /** How many schedules are checked with it, where somebody counts them. */
  schedules = mostSchedules;
  /** The boards whose ways were looked at last. */
  readonly recent = new Recent(mostRecent);

  /** What was found in so many places is kept: a file has one in each schedule it is part of, and the one before an edit. */
  get mostKept(): number {
    return Math.min(this.schedules, mostSchedules) + 1;
  }

  /** Names are a person's own: a list that has met too many of them is begun anew. */
  get questions(): Questions {
    if (this.#questions.isFull) this.#questions = new Questions();
    return this.#questions;
  }
}
