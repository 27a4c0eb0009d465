import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { working } from "../../server/calc/result.ts";
import { continuityTestCurrent, readingUncertainty } from "../../server/calc/uncertainty.ts";

describe("the uncertainty of a reading", () => {
  it("is a share of it and steps of its last figure", () => {
    const uncertainty = readingUncertainty({ value: 1.06, step: 0.01, unit: "Ω" }, { percent: 3, digits: 3 }, "M1");
    expect(uncertainty.value).toBeCloseTo(1.06 * 0.03 + 0.03, 12);
    expect(working(uncertainty.steps)).toBe(
      "uncertainty of M1 = reading × share + digits × last figure = 1.06 Ω × 3 % + 3 × 0.01 Ω = ±0.062 Ω",
    );
  });

  it("is in the figures of the reading: megohms, milliseconds", () => {
    const insulation = readingUncertainty({ value: 1.02e6, step: 1e4, unit: "Ω" }, { percent: 3, digits: 0 }, "M2");
    expect(working(insulation.steps)).toBe("uncertainty of M2 = reading × share = 1.02 MΩ × 3 % = ±0.031 MΩ");
    const time = readingUncertainty({ value: 0.297, step: 0.001, unit: "s" }, { percent: 2, digits: 2 }, "M1");
    expect(time.value).toBeCloseTo(0.00794, 12);
  });

  it("never shrinks as the reading, the share or the digits grow", () => {
    const positive = fc.double({ min: 0, max: 100, noNaN: true });
    const digits = fc.integer({ min: 0, max: 20 });
    fc.assert(
      fc.property(positive, positive, digits, positive, (value, percent, count, more) => {
        const of = (reading: number, share: number, steps: number): number =>
          readingUncertainty({ value: reading, step: 0.01, unit: "Ω" }, { percent: share, digits: steps }, "M1").value;
        const uncertainty = of(value, percent, count);
        expect(uncertainty).toBeGreaterThanOrEqual(0);
        expect(of(value + more, percent, count)).toBeGreaterThanOrEqual(uncertainty);
        expect(of(value, percent + more, count)).toBeGreaterThanOrEqual(uncertainty);
        expect(of(value, percent, count + 1)).toBeGreaterThan(uncertainty);
      }),
    );
  });

  it("a continuity tester drives 200 mA at least, as was seen published", () => {
    expect(continuityTestCurrent()).toMatchObject({ value: 0.2, unit: "A", source: { standing: "quoted" } });
  });
});
