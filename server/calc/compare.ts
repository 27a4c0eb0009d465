/** Binary noise in a product must not fail a reading that equals its limit: 1.4 × 30 mA is a hair below 42 mA. */
const noise = 1e-9;

export const exceeds = (value: number, limit: number): boolean => value > limit + Math.abs(limit) * noise;
export const fallsShort = (value: number, limit: number): boolean => value < limit - Math.abs(limit) * noise;

/** The one with the greatest figure, and the figure; of two as great the first. Those without one are passed over. */
export function greatestBy<T>(
  all: readonly T[],
  figureOf: (one: T) => number | undefined,
): { readonly one: T; readonly figure: number } | undefined {
  let most: { readonly one: T; readonly figure: number } | undefined;
  for (const one of all) {
    const figure = figureOf(one);
    if (figure !== undefined && (!most || figure > most.figure)) most = { one, figure };
  }
  return most;
}
