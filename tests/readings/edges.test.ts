/** What is made of readings where a rule turns: the thresholds are common practice of `tables/dead-test-practice.ts`. */
import { describe, expect, it } from "vitest";
import type { Quantity } from "../../server/model/values.ts";
import { lengthMismatch, sizeOfResistance, unslipped } from "../../server/readings/dead.ts";
import { against } from "../../server/readings/insulation.ts";
import { median } from "../../server/readings/population.ts";
import type { DatedTest } from "../../server/readings/series.ts";
import { visitsOf } from "../../server/readings/visits.ts";

const read = (value: number, sign: Quantity["sign"] = "=", unit = "Ω"): Quantity => ({
  value,
  sign,
  unit,
  decimals: 2,
  start: 0,
  end: 0,
});

describe("a reading against length and size", () => {
  // Half as much again, and 0.1 Ω at least, is too much; under 0.7, and by 0.05 Ω at least, too little.
  it.each([
    [1.5, 1, "=", undefined],
    [1.51, 1, "=", "high"],
    [0.26, 0.16, "=", undefined],
    [0.261, 0.16, "=", "high"],
    [0.7, 1, "=", undefined],
    [0.69, 1, "=", "low"],
    [0.1, 0.15, "=", undefined],
    [0.099, 0.15, "=", "low"],
    [2, 1, "<", undefined],
    [2, 1, ">", "high"],
    [0.5, 1, ">", undefined],
    [0.5, 1, "<", "low"],
  ] as const)("%d Ω of %d Ω, %s", (value, expected, sign, kind) => {
    expect(lengthMismatch(read(value, sign), expected)?.kind).toBe(kind);
  });

  // Within 12 % of a power of ten it is the decimal point.
  it.each([
    [3.8, 0.38, "=", 10],
    [3.8 * 1.119, 0.38, "=", 10],
    [3.8 * 1.121, 0.38, "=", undefined],
    [38, 0.38, "=", 100],
    [0.05, 0.5, "=", 0.1],
    [0.05 * 0.87, 0.5, "=", undefined],
    [0.005, 0.5, "=", 0.01],
    [3.8, 0.38, ">", undefined],
  ] as const)("%d Ω of %d Ω, %s: the point is out by %s", (value, expected, sign, slip) => {
    const found = lengthMismatch(read(value, sign), expected);
    expect([found?.ratio, found?.slip]).toEqual([value / expected, slip]);
  });

  // What leaves the band: of 0.38 Ω it ends at 0.57 Ω and 0.266 Ω, of 0.15 Ω at 0.25 Ω and 0.1 Ω.
  it.each([
    [0.6, 0.38, 0.03],
    [0.2, 0.38, 0.066],
    [0.3, 0.15, 0.05],
    [0.05, 0.15, 0.05],
  ])("%d Ω of %d Ω leaves the band by %d Ω", (value, expected, by) => {
    expect(lengthMismatch(read(value), expected)?.by).toBeCloseTo(by, 9);
  });

  it("is written with its point where it belongs", () => {
    expect(unslipped(read(3.8), 10)).toBe("0.38 Ω");
    expect(unslipped(read(0.038), 0.1)).toBe("0.38 Ω");
    expect(unslipped(read(3.8, "=", "mΩ"), 10)).toBe("380 mΩ");
  });

  // BS EN 60228: 7.41 mΩ/m of 2.5 mm², 12.1 of 1.5 mm²; 15 % from the nearest it is none.
  it.each([
    [0.00741, 2.5],
    [0.0121, 1.5],
    [0.00741 * 1.149, 2.5],
    [0.00741 / 1.149, 2.5],
    [0.00741 * 1.2, undefined],
    [10, undefined],
  ])("%d Ω/m is a conductor of %s mm²", (perMetre, csa) => expect(sizeOfResistance(perMetre)).toBe(csa));
});

describe("visits", () => {
  const days = (...all: string[]) =>
    visitsOf(all.map((on) => ({ on }) as DatedTest)).map(({ on, tests }) => `${on}: ${tests.length}`);

  it("are of one month: 31 days apart is the same, 32 another", () => {
    expect(days("2026-03-05", "2026-02-02")).toEqual(["2026-03-05: 2"]);
    expect(days("2026-03-05", "2026-02-01")).toEqual(["2026-03-05: 1", "2026-02-01: 1"]);
  });

  it("go on from the day before, and take in a block without its day", () => {
    expect(days("2026-03-05", "2026-02-10", "2026-01-20", "2025-01-01")).toEqual(["2026-03-05: 3", "2025-01-01: 1"]);
    expect(days("2026-03-05", "", "2026-02-10")).toEqual(["2026-03-05: 3"]);
    expect(days("", "2026-03-05")).toEqual([": 2"]);
  });
});

// Table 64: not below the least. Off the scale it shows only what lies on its side.
it.each([
  [1e6, "=", "passes"],
  [0.99e6, "=", "fails"],
  [1e6, ">", "passes"],
  [0.99e6, ">", "unproven"],
  [1e6, "<", "fails"],
  [1.01e6, "<", "unproven"],
] as const)("insulation of %d Ω, %s, %s at least 1 MΩ", (value, sign, verdict) => {
  expect(against(read(value, sign), 1e6)).toBe(verdict);
});

it("the median of an even number lies between the two in the middle", () => {
  expect([median([3, 1, 2]), median([4, 1, 3, 2]), median([5])]).toEqual([2, 2.5, 5]);
});
