import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dropLimit, dropPerAmpereMetre, dropPercent, voltageDrop } from "../../server/calc/voltage-drop.ts";
import { half } from "./helpers.ts";

const per = (millivolts: number) => ({
  value: millivolts / 1000,
  source: { ref: "Table 4D5", standing: "quoted" } as const,
});
const twin = { construction: "flat-twin", insulation: 70, method: "C", loaded: 2 } as const;

describe("worked examples", () => {
  // Cables, conduits and trunking (notes): 6 kW at 240 V in 4 mm², 16 m: 1.83 %.
  it("6 kW shower, 16 m: 1.83 %", () => {
    const drop = voltageDrop({ perAmpereMetre: per(11), current: 6000 / 240, length: 16 });
    expect(drop.value).toBeCloseTo(4.4, 9);
    expect(Math.abs(dropPercent(drop, 240).value - 1.83)).toBeLessThanOrEqual(half(2));
  });

  // Determining the csa of the cpc (forum): 10 mm², 21.73 A, 18 m: 1.72 V. Cable size for low voltage lights: 2.55 V.
  it.each([
    [4.4, 21.73, 18, 1.72],
    [17, 5, 30, 2.55],
  ])("%f mV/A/m, %f A, %f m: %f V", (millivolts, current, length, published) => {
    const drop = voltageDrop({ perAmpereMetre: per(millivolts), current, length });
    expect(Math.abs(drop.value - published)).toBeLessThanOrEqual(half(2));
  });

  // Basic Electrical Installation Work, p. 302, cuts 2.0663 V to 2.06.
  it("a house extension drops 2.066 V, cut to 2.06 in the book", () => {
    const drop = voltageDrop({ perAmpereMetre: per(4.4), current: 26.09, length: 18 });
    expect(drop.value).toBeCloseTo(2.06633, 5);
    expect(Math.trunc(drop.value * 100) / 100).toBe(2.06);
  });

  // Exercises of sizing cable: 16 kW three-phase, 25 m, 10 and 4 mm²; the drops are the exercise's own sums.
  it("16 kW on three phases, 25 m: 2.19 V in 10 mm², 5.48 V in 4 mm²", () => {
    const current = 16_000 / (Math.sqrt(3) * 400);
    const drop = (csa: number) => {
      const perAmpereMetre = dropPerAmpereMetre({
        construction: "multicore",
        insulation: 70,
        method: "C",
        loaded: 3,
        csa,
      });
      return perAmpereMetre && voltageDrop({ perAmpereMetre, current, length: 25 }).value;
    };
    expect(drop(10)).toBeCloseTo(2.19393, 5);
    expect(drop(4)).toBeCloseTo(5.48483, 5);
  });
});

describe("tables and limits", () => {
  // Wholesaler copies of 4D1B, 4D2B and 4E1B.
  it.each([
    [{ ...twin, csa: 2.5 }, 18],
    [{ construction: "singles", insulation: 70, method: "B", loaded: 2, csa: 25 }, 1.8],
    [{ construction: "singles", insulation: 70, method: "C", loaded: 2, csa: 25 }, 1.75],
    [{ construction: "singles", insulation: 70, method: "C", loaded: 3, csa: 50 }, 0.82],
    [{ construction: "armoured", insulation: 90, method: "E", loaded: 2, csa: 10 }, 4.7],
  ] as const)("%o: %f mV/A/m", (question, millivolts) => {
    expect((dropPerAmpereMetre(question)?.value ?? 0) * 1000).toBeCloseTo(millivolts, 9);
  });

  it("have no value for a size they lack", () => {
    expect(dropPerAmpereMetre({ ...twin, csa: 25 })).toBeUndefined();
    expect(dropPerAmpereMetre({ ...twin, csa: 2.5, loaded: 3 })).toBeUndefined();
  });

  it.each([
    ["lighting", "public", 3],
    ["other", "public", 5],
    ["lighting", "private", 6],
    ["other", "private", 8],
  ] as const)("%s on a %s supply: %i %%", (use, supply, percent) => {
    expect(dropLimit(use, supply).value).toBe(percent);
  });
});

it("a ring drops a quarter, and longer or more current is never less", () => {
  const positive = fc.double({ min: 0, max: 300, noNaN: true });
  fc.assert(
    fc.property(positive, positive, positive, (current, length, extra) => {
      const drop = (i: number, l: number, ring = false) =>
        voltageDrop({ perAmpereMetre: per(18), current: i, length: l, ring }).value;
      expect(drop(current, length, true)).toBeCloseTo(drop(current, length) / 4, 9);
      expect(drop(current, length + extra)).toBeGreaterThanOrEqual(drop(current, length));
      expect(drop(current + extra, length)).toBeGreaterThanOrEqual(drop(current, length));
    }),
  );
});
