/** A reading that was taken on two days, the later first among the tests. */
export interface Pair<F> {
  readonly now: F;
  readonly was: F;
  /** The day of the earlier. */
  readonly on: string;
}

/** The latest reading and the one before it, where the latest tests have it. `tests` begin with the latest. */
export function earlier<F>(
  tests: readonly { readonly on: string; readonly fact: F | undefined }[],
): Pair<F> | undefined {
  const [latest, ...before] = tests;
  const match = before.find(({ fact }) => fact !== undefined);
  if (!latest?.fact || !match?.fact) return undefined;
  return { now: latest.fact, was: match.fact, on: match.on };
}
