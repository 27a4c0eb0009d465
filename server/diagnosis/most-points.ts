/**
 * What is tried grows with the points and with the readings at them. Real circuits have a few dozen; beyond these numbers
 * pairs of faults are left out, and then everything, and it is said so: nobody waits for a diagnosis. Of a ring whose readings
 * are all accepted, with more points than the first, nothing further is looked for.
 */
export const mostPoints = { patterned: 16, inPairs: 100, diagnosed: 300 } as const;
