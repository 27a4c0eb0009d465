/** A set of small numbers, in words of thirty-two. */
export type Bits = readonly number[];

/** Bits of a word, as a power of two: what is asked is noted at every step, so no division is made for it. */
const wordShift = 5;
const perWord = 1 << wordShift;
const inWord = perWord - 1;

export function addBit(bits: number[], bit: number): void {
  const at = bit >> wordShift;
  while (bits.length <= at) bits.push(0);
  bits[at] = (bits[at] as number) | (1 << (bit & inWord));
}

export function addBits(bits: number[], others: Bits): void {
  while (bits.length < others.length) bits.push(0);
  for (let at = 0; at < others.length; at++) bits[at] = (bits[at] as number) | (others[at] as number);
}

export const hasBit = (bits: Bits, bit: number): boolean =>
  (((bits[bit >> wordShift] ?? 0) >> (bit & inWord)) & 1) === 1;

export const bitsOfBoth = (one: Bits, other: Bits): Bits => one.map((word, at) => word & (other[at] ?? 0));

export function bitsMeet(one: Bits, other: Bits): boolean {
  const length = Math.min(one.length, other.length);
  for (let at = 0; at < length; at++) if (((one[at] as number) & (other[at] as number)) !== 0) return true;
  return false;
}

export function* listBits(bits: Bits): Generator<number> {
  for (let at = 0; at < bits.length; at++) {
    for (let bit = 0; bit < perWord; bit++) if (((bits[at] as number) >> bit) & 1) yield at * perWord + bit;
  }
}
