import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { withstand } from "../../server/calc/adiabatic.ts";
import { beyondLimit, toLookUp } from "../../server/calc/verdict.ts";
import { bandOf, combine, type Remembered, type Source, squared, summed } from "../../server/tables/source.ts";

const share = fc.double({ min: 0, max: 0.5, noNaN: true });
const figures = fc.uniqueArray(fc.record({ figure: fc.constantFrom("a", "b", "c"), share }), {
  selector: ({ figure }) => figure,
  maxLength: 3,
});
const of = (remembered: readonly Remembered[]): Source => ({ ref: "r", standing: "memory", remembered });
/** A value beyond its limit by up to twice. */
const beyond = fc.record({
  limit: fc.double({ min: 0.1, max: 100, noNaN: true }),
  by: fc.double({ min: 1.0001, max: 2, noNaN: true }),
});

describe("a verdict on figures from memory", () => {
  it("is the plain one where nothing is in doubt", () =>
    fc.assert(
      fc.property(beyond, figures, ({ limit, by }, all) => {
        const narrow = of(all.map(({ figure }) => ({ figure, share: 0 })));
        expect(beyondLimit(limit * by, limit, narrow)).toBe("fails");
      }),
      { seed: 20261129 },
    ));

  it("may turn unproven as a band grows, and never the other way about", () =>
    fc.assert(
      fc.property(beyond, figures, share, ({ limit, by }, all, more) => {
        const wide = of(all.map(({ figure, share: own }) => ({ figure, share: own + more })));
        fc.pre(beyondLimit(limit * by, limit, wide) === "fails");
        expect(beyondLimit(limit * by, limit, of(all))).toBe("fails");
      }),
      { seed: 20261129 },
    ));

  // Interval arithmetic by hand: 0.5 Ω printed and 1 Ω ± 10 % make 1.5 Ω ± 0.1 Ω, so at least 1.4 Ω.
  it("counts a figure in a sum by its part of the whole", () => {
    const sum = summed(
      { value: 0.5, source: { ref: "printed", standing: "printed" } },
      { value: 1, source: of([{ figure: "armour", share: 0.1 }]) },
    );
    expect(bandOf(sum)).toBeCloseTo(1 + 0.1 / 1.5, 12);
    expect([beyondLimit(1.5, 1.37, sum), beyondLimit(1.5, 1.45, sum)]).toEqual(["fails", "unproven"]);
    expect(toLookUp(sum)).toBe("armour (±7 %)");
  });

  it("lets no sum be surer than each figure at its own end would make it", () =>
    fc.assert(
      fc.property(
        fc.array(fc.record({ value: fc.double({ min: 0.01, max: 10, noNaN: true }), share }), {
          minLength: 1,
          maxLength: 5,
        }),
        (parts) => {
          const total = parts.reduce((sum, { value }) => sum + value, 0);
          const least = parts.reduce((sum, part) => sum + part.value / (1 + part.share), 0);
          const source = summed(
            ...parts.map((part, at) => ({ value: part.value, source: of([{ figure: `${at}`, share: part.share }]) })),
          );
          expect(total / bandOf(source)).toBeLessThanOrEqual(least * (1 + 1e-9));
        },
      ),
      { seed: 20261129 },
    ));

  it("takes the same figure in two factors once, by its larger share", () => {
    const one = of([{ figure: "Ca", share: 0.1 }]);
    expect(bandOf(combine(one, of([{ figure: "Ca", share: 0.2 }])))).toBeCloseTo(1.2, 12);
    expect(bandOf(combine(one, of([{ figure: "Cg", share: 0.2 }])))).toBeCloseTo(1.1 * 1.2, 12);
  });

  // k² with k 100 ± 10 % lies between 8 100 and 12 100: 21 % over 10 000, not 10 %.
  it("counts a figure twice where it is squared", () => {
    expect(bandOf(squared(of([{ figure: "k", share: 0.1 }])))).toBeCloseTo(1.21, 12);
    const k = { value: 66, source: of([{ figure: "k", share: 0.1 }]) };
    expect(bandOf(withstand(2.5, k).source)).toBeGreaterThanOrEqual(1.21);
  });
});

it("a figure of 1 is a figure, and one of 0 is beyond any band", () => {
  const tenth = of([{ figure: "a", share: 0.1 }]);
  expect([beyondLimit(1, 1.05, tenth), beyondLimit(1.05, 1, tenth), beyondLimit(1, 1.2, tenth)]).toEqual([
    "unproven",
    "unproven",
    "fails",
  ]);
  expect([beyondLimit(0, 0.5, tenth), beyondLimit(0.5, 0, tenth), beyondLimit(0, 0, tenth)]).toEqual([
    "fails",
    "fails",
    "unproven",
  ]);
});
