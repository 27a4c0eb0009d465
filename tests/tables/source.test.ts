import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Source, Standing } from "../../server/tables/source.ts";
import { combine, fromFormula, weakest } from "../../server/tables/source.ts";

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
