/** How many answers are kept before all are dropped: far more than a large installation has kinds of circuit. */
const ceiling = 5_000;

/**
 * Keeps the answers of a pure function by a key that says all it depends on. Circuits of a board are mostly alike, and
 * an answer is the same object each time, with its steps and source.
 */
export function memoByKey<Q extends readonly unknown[], R>(
  keyOf: (...question: Q) => string,
  compute: (...question: Q) => R,
): (...question: Q) => R {
  const kept = new Map<string, { readonly answer: R }>();
  return (...question) => {
    const key = keyOf(...question);
    const before = kept.get(key);
    if (before) return before.answer;
    if (kept.size >= ceiling) kept.clear();
    const answer = compute(...question);
    kept.set(key, { answer });
    return answer;
  };
}
