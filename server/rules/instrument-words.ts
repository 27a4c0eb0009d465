/** What is said of an instrument once, however many tests it was used for. */
export const sameTests = (others: readonly unknown[]): string =>
  others.length === 0 ? "" : ` and ${others.length === 1 ? "one other" : `${others.length} others`}`;
