/** How much longer a cable may be: with R and X in the ratio of 3 to 4 an impedance is 5. */
import { expect, it } from "vitest";
import { timesToLimit } from "../../server/readings/loop.ts";

type Loop = Parameters<typeof timesToLimit>[0];

const loop = (value: number, start: number, R: number, X: number): Loop => ({
  value,
  unit: "Ω",
  steps: [],
  source: { ref: "", standing: "quoted" },
  parts: { start, R, X },
});

it.each([
  // 0.1 Ω at the origin and 0.5 Ω a length.
  [loop(0.1, 0.1, 0, 0), loop(0.6, 0.1, 0.3, 0.4), 1.1, 2],
  [loop(0.1, 0.1, 0, 0), loop(0.6, 0.1, 0.3, 0.4), 0.6, 1],
  [loop(0.1, 0.1, 0, 0), loop(0.6, 0.1, 0.3, 0.4), 0.1, 0],
  // Behind a feeder that has 0.5 Ω itself, of the same kind and of a pure resistance.
  [loop(0.6, 0.1, 0.3, 0.4), loop(1.1, 0.1, 0.6, 0.8), 2.6, 4],
  [loop(0.4, 0.1, 0.3, 0), loop(0.6, 0.1, 0.3, 0.4), 0.6, 1],
  [loop(0.4, 0.1, 0.3, 0), loop(0.6, 0.1, 0.3, 0.4), 0.1 + Math.sqrt(0.73), 2],
  // The reactance lies before the circuit, which has none.
  [loop(0.5, 0.1, 0, 0.4), loop(0.6, 0.1, 0.3, 0.4), 0.6, 1],
  [loop(0.5, 0.1, 0, 0.4), loop(0.6, 0.1, 0.3, 0.4), 0.1 + Math.sqrt(0.52), 2],
  // None anywhere: as numbers add.
  [loop(0.4, 0.1, 0.3, 0), loop(0.6, 0.1, 0.5, 0), 1.4, 5],
  [loop(0.4, 0.1, 0.3, 0), loop(0.6, 0.1, 0.5, 0), 0.2, -1],
])("from %o, being %o, to %d Ω", (start, whole, limit, times) => {
  expect(timesToLimit(start, whole, limit)).toBeCloseTo(times, 9);
});

it("is nothing where the limit lies below what is there already", () => {
  expect(timesToLimit(loop(0.1, 0.1, 0, 0), loop(0.6, 0.1, 0.3, 0.4), 0.05)).toBeCloseTo(0, 9);
  expect(timesToLimit(loop(0.6, 0.1, 0.3, 0.4), loop(1.1, 0.1, 0.6, 0.8), 0.05)).toBeLessThanOrEqual(0);
});
