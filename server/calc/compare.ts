/** Binary noise in a product must not fail a reading that equals its limit: 1.4 × 30 mA is a hair below 42 mA. */
const noise = 1e-9;

export const exceeds = (value: number, limit: number): boolean => value > limit + Math.abs(limit) * noise;
export const fallsShort = (value: number, limit: number): boolean => value < limit - Math.abs(limit) * noise;
