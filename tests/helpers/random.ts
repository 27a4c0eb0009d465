/** Numbers between 0 and 1 that a seed repeats (mulberry32, a public-domain generator). */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A resistance as a meter shows it: a digit or two more or less than length and size give, never nothing. */
export function asRead(resistance: number, length: number): number {
  if (resistance < 0.04) return resistance;
  const digits = resistance < 0.1 ? 1 : 2;
  return resistance + ((Math.round(length * 7) % (2 * digits + 1)) - digits) / 100;
}
