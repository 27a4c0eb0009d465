import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Source, Standing } from "../../server/tables/source.ts";
import { combine, differing, fromFormula, squared, summed, weakest } from "../../server/tables/source.ts";

const order: readonly Standing[] = ["memory", "practice", "computed", "quoted", "printed"];
const standing = fc.constantFrom(...order);
const source: fc.Arbitrary<Source> = fc.record({
  ref: fc.constantFrom("BS 7671:2018, Table 41.3", "BS EN 60228, Table 1", "On-Site Guide, Table I1"),
  standing,
});

describe("standings", () => {
  it("combine to the weakest, whatever the order", () => {
    fc.assert(
      fc.property(fc.array(standing, { minLength: 1 }), (some) => {
        const rank = Math.min(...some.map((one) => order.indexOf(one)));
        expect(weakest(...some)).toBe(order[rank]);
        expect(weakest(...some.toReversed())).toBe(order[rank]);
      }),
    );
  });

  it("of a formula are never better than computed", () => {
    for (const one of order) expect(order.indexOf(fromFormula({ ref: "r", standing: one }).standing)).toBeLessThan(3);
    expect(fromFormula({ ref: "r", standing: "memory" }).standing).toBe("memory");
  });
});

describe("sources", () => {
  it("combine without repeating a reference, however often they are combined", () => {
    fc.assert(
      fc.property(fc.array(source, { minLength: 1 }), (some) => {
        const once = combine(...some);
        expect(once.ref.split("; ")).toEqual([...new Set(some.map(({ ref }) => ref))]);
        expect(combine(once, ...some)).toEqual(once);
      }),
    );
  });

  it("keep each note once", () => {
    const noted = { ref: "a", standing: "quoted", note: "Check the book." } as const;
    expect(combine(noted, { ...noted, ref: "b" })).toEqual({
      ref: "a; b",
      standing: "quoted",
      note: "Check the book.",
    });
  });
});

/** Sums by hand stand beside each: what a figure from memory can move of what is made of it. */
describe("what is out where figures from memory are put together", () => {
  const from = (figure: string, value: number, share: number) => ({
    value,
    source: { ref: figure, standing: "memory" as const, remembered: [{ figure, share }] },
  });
  const known = { value: 0.3, source: { ref: "k", standing: "quoted" as const } };
  const shares = ({ remembered = [] }: Source) =>
    Object.fromEntries(remembered.map(({ figure, share }) => [figure, share]));

  it("is their part of a sum", () => {
    // 10 % of 0.1 in 0.4 is a quarter of 10 %; the same figure twice counts with both parts.
    expect(shares(summed(from("a", 0.1, 0.1), known)).a).toBeCloseTo(0.025, 12);
    const { a, b } = shares(summed(from("a", 0.1, 0.1), from("b", 0.2, 0.2), from("a", 0.1, 0.1)));
    expect([a, b]).toEqual([expect.closeTo(0.05, 12), expect.closeTo(0.1, 12)]);
    expect(summed(known, known)).toEqual(known.source);
    // A value of 0 has no parts: the whole share stays.
    expect(shares(summed(from("a", 0, 0.1), from("b", 0, 0.2)))).toEqual({ a: 0.1, b: 0.2 });
  });

  it("is all that a small difference can lose", () => {
    // 0.5 less 0.3, each 10 % out: at worst 0.45 - 0.33 = 0.12 is left of 0.2, and 0.2 / 0.12 is 1.667 times less.
    const { a = 0, b = 0 } = shares(differing(from("a", 0.5, 0.1), from("b", 0.3, 0.1)));
    expect((1 + a) * (1 + b)).toBeCloseTo(0.2 / 0.12, 9);
    // Of the 0.08 that may be lost 0.05 is of the one and 0.03 of the other.
    expect(Math.log(1 + a) / Math.log(1 + b)).toBeCloseTo(0.05 / 0.03, 9);
    // What moves both is one figure: 0.5 - 0.05 less 0.3 + 0.03 again.
    expect(shares(differing(from("a", 0.5, 0.1), from("a", 0.3, 0.1))).a).toBeCloseTo(0.2 / 0.12 - 1, 9);
    expect(differing({ ...known, value: 0.5 }, known)).toEqual(known.source);
  });

  it("is without bounds where they may be all of a difference", () => {
    // 10 % of 0.5 and of 0.5 is more than the 0.05 between 0.5 and 0.45; between equal figures nothing is left at all.
    expect(shares(differing(from("a", 0.5, 0.1), from("b", 0.45, 0.1))).a).toBe(Number.POSITIVE_INFINITY);
    expect(shares(differing(from("a", 0.5, 0.1), { ...known, value: 0.5 })).a).toBe(Number.POSITIVE_INFINITY);
  });

  it("is nothing of what cannot be wrong", () => {
    expect(shares(differing(from("a", 0.5, 0), known))).toEqual({ a: 0 });
  });

  it("counts twice in a square", () => {
    // 10 % more, squared, is 21 % more.
    expect(shares(squared(from("a", 2, 0.1).source)).a).toBeCloseTo(0.21, 12);
    expect(squared(known.source)).toBe(known.source);
  });
});
