/** How many answers are kept before all are dropped: far more than a large installation has kinds of circuit. */
const ceiling = 5_000;

/** A pure function, its questions distinguished by a text. */
interface Alike<Q, R> {
  (question: Q): R;
  keyOf(question: Q): string;
}

export const alike = <Q, R>(keyOf: (question: Q) => string, compute: (question: Q) => R): Alike<Q, R> =>
  Object.assign((question: Q) => compute(question), { keyOf });

/**
 * The answers of such functions. Circuits are mostly alike, and an answer is the same object each time, with its steps
 * and source.
 */
export class AlikeAnswers {
  readonly #of = new Map<object, Map<string, unknown>>();

  answer<Q, R>(of: Alike<Q, R>, question: Q): R {
    let known = this.#of.get(of);
    if (!known) {
      known = new Map();
      this.#of.set(of, known);
    }
    const key = of.keyOf(question);
    const before = known.get(key) as R | undefined;
    if (before !== undefined) return before;
    if (known.size >= ceiling) known.clear();
    const answer = of(question);
    known.set(key, answer);
    return answer;
  }
}
