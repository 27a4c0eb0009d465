import { describe, expect, it } from "vitest";
import { lengthFromResistance, resistancePerMetre } from "../../server/calc/conductor-resistance.ts";
import {
  cpcRatio,
  expectedSpan,
  quarterLineCpc,
  quarterLineNeutral,
  readingAt,
  ringRule,
  ringTolerance,
} from "../../server/calc/ring.ts";

describe("worked examples", () => {
  // Ring final test results (forum): r1 = rn = 1.6, r2 = 4.1; 0.8 Ω expected line-neutral, 216 m implied, r2/r1 2.6.
  it("odd readings: r1 = rn = 1.6, r2 = 4.1", () => {
    const ends = { r1: 1.6, rn: 1.6, r2: 4.1 };
    expect(quarterLineNeutral(ends).value).toBeCloseTo(0.8, 9);
    expect(quarterLineCpc(ends).value).toBeCloseTo(1.425, 9);
    const perMetre = resistancePerMetre(2.5);
    expect(perMetre && lengthFromResistance(1.6, perMetre).value).toBeCloseTo(216, 0);
    // Far from the cable's own ratio, which is what the repliers made of it.
    expect(ends.r2 / ends.r1).toBeGreaterThan(1.5 * (cpcRatio(2.5, 1.5)?.value ?? 0));
  });

  // Ring (derivation sheet): R(x) = [x·r1+(1−x)·r2]·[x·r2+(1−x)·r1]/(r1+r2); at x = ½ it is (r1+r2)/4.
  it.each([
    [0, 0.19343],
    [0.25, 0.230045],
    [0.5, 0.24225],
    [0.75, 0.230045],
    [1, 0.19343],
  ])("r1 0.267, r2 0.702 at %f of the way reads %f Ω", (fraction, expected) => {
    expect(readingAt(0.267, 0.702, fraction)?.value).toBeCloseTo(expected, 6);
  });

  // IET Wiring Matters 89, March 2022: lowest at the board, highest half way. 4.0/1.5 spreads more than the tolerance.
  it("100 m in 4.0/1.5 spreads by 0.084 Ω, in 2.5/1.5 by 0.028 Ω", () => {
    const spread = (r1: number, r2: number) => {
      const span = expectedSpan(r1, r2);
      return (span?.greatest.value ?? 0) - (span?.least.value ?? 0);
    };
    expect(spread(0.461, 1.21)).toBeCloseTo(0.084, 3);
    expect(spread(0.461, 1.21)).toBeGreaterThan(ringTolerance.value);
    expect(spread(0.741, 1.21)).toBeCloseTo(0.028, 3);
  });

  // End-to-end resistance values of ring final circuits (trade-body article): 1.67 by area; 1.633 by tabulated resistance.
  it("r2/r1 of 2.5/1.5 is 1.633 by resistance, 1.67 by area", () => {
    expect(cpcRatio(2.5, 1.5)?.value).toBeCloseTo(12.1 / 7.41, 9);
    expect(Math.abs((cpcRatio(2.5, 1.5)?.value ?? 0) - 2.5 / 1.5)).toBeLessThan(0.04);
    expect(cpcRatio(4, 1.5)?.value).toBeCloseTo(2.62, 2);
  });

  // EICRs: observations and test results (forum): invented readings split R1+R2 by area, 0.6 and 1.0 Ω for 0.4 Ω.
  it("true cable does not split as invented readings do", () => {
    const ratio = cpcRatio(2.5, 1.5)?.value ?? 0;
    expect(quarterLineCpc({ r1: 0.6, rn: 0.6, r2: 1 }).value).toBeCloseTo(0.4, 9);
    expect(1 / (1 + ratio)).toBeCloseTo(0.38, 3);
    expect(0.6 / 1.6).toBeCloseTo(0.375, 9);
  });
});

describe("rules", () => {
  // DIYnot wiki on 433.1.5 (now 433.1.204): 2.5 mm², 1.5 mm² mineral insulated, Iz not less than 20 A.
  it.each([
    ["csa", 2.5],
    ["csa-mineral", 1.5],
    ["capacity", 20],
    ["fused-spur", 13],
    ["area", 100],
  ] as const)("%s is %f", (key, value) => {
    expect(ringRule(key)).toMatchObject({ value, source: { standing: "quoted" } });
  });

  it("the tolerance between like readings is common practice", () => {
    expect(ringTolerance).toMatchObject({ value: 0.05, source: { standing: "practice" } });
  });

  it("an open ring, or one without resistance, has no expectation", () => {
    expect(readingAt(Number.POSITIVE_INFINITY, 0.7, 0.3)).toBeUndefined();
    expect(expectedSpan(0, 0)).toBeUndefined();
  });
});
