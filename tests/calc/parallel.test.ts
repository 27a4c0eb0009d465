import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { faultInOneOf } from "../../server/calc/parallel.ts";
import { startNgspice, startVoltages } from "./ngspice.ts";

/** So many conductors of 1 Ω from the supply to the far end, one of them with a fault `at` of its length. */
const network = (count: number, at: number) => [
  { from: "supply", to: "fault", ohms: at },
  { from: "fault", to: "end", ohms: 1 - at },
  ...Array.from({ length: count - 1 }, () => ({ from: "supply", to: "end", ohms: 1 })),
];

describe("a fault in one of several conductors in parallel, fed from both ends", () => {
  let resistance: Awaited<ReturnType<typeof startNgspice>>;
  let voltages: Awaited<ReturnType<typeof startVoltages>>;
  beforeAll(async () => {
    resistance = await startNgspice();
    voltages = await startVoltages();
  });
  const place = fc.record({
    count: fc.integer({ min: 2, max: 8 }),
    at: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
  });

  it("has the resistance and the share of the current that ngspice finds", async () => {
    await fc.assert(
      fc.asyncProperty(place, async ({ count, at }) => {
        const { share, times } = faultInOneOf(count, at);
        // All of them together have 1/n Ω from end to end.
        expect(times / count).toBeCloseTo(await resistance(network(count, at), "supply", "fault"), 6);
        const found = await voltages(network(count, at), [{ node: "supply", amperes: 1 }], "fault");
        expect(share).toBeCloseTo((found.get("supply") ?? Number.NaN) / at, 6);
      }),
      { numRuns: 40 },
    );
  });

  it("is at the end what all of them have, each with its part", () => {
    for (const count of [2, 3, 4]) expect(faultInOneOf(count, 1)).toMatchObject({ share: 1 / count });
    expect([2, 3, 4].map((count) => faultInOneOf(count, 1).times)).toEqual([1, 1, 1]);
  });

  it("has its greatest loop at n / (2 (n − 1)) of the length, where each end feeds a half", () => {
    // By differentiating n x (1 − x (n − 1) / n): 9/8 of the end for three, 4/3 for four.
    expect(faultInOneOf(3, 3 / 4)).toMatchObject({ share: 0.5, times: 9 / 8 });
    expect(faultInOneOf(4, 2 / 3).times).toBeCloseTo(4 / 3, 12);
  });
});
