import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exceeds } from "../../server/calc/compare.ts";
import { beyondLimit, onlyAsRemembered } from "../../server/calc/verdict.ts";
import { bandOf, differing, type Source } from "../../server/tables/source.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const from = (figure: string, share: number): Source => ({
  ref: figure,
  standing: "memory",
  remembered: [{ figure, share }],
});
const share = fc.double({ min: 0.01, max: 0.5, noNaN: true });
const amount = fc.double({ min: 0.1, max: 1000, noNaN: true });

/** Interval arithmetic by the ends, as it would be done by hand, judges what the bands say. */
describe("a verdict by the ends of its band", () => {
  it("is kept by whatever the figure should be, where it is plain", () => {
    fc.assert(
      fc.property(amount, amount, share, fc.double({ min: -1, max: 1, noNaN: true }), (value, limit, by, where) => {
        const source = from("Table", by);
        const real = limit * (where < 0 ? 1 / (1 - where * by) : 1 + where * by);
        if (exceeds(value, limit)) {
          if (beyondLimit(value, limit, source) === "fails") expect(exceeds(value, real)).toBe(true);
        } else if (!onlyAsRemembered(value, limit, source)) expect(value).toBeLessThanOrEqual(real * (1 + 1e-9));
      }),
    );
  });

  it("of a difference holds every difference its parts can have", () => {
    fc.assert(
      fc.property(amount, amount, share, share, fc.boolean(), (one, other, a, b, worst) => {
        const [most, less] = one > other ? [one, other] : [other, one];
        fc.pre(most - less >= 1e-6);
        const band = bandOf(differing({ value: most, source: from("a", a) }, { value: less, source: from("b", b) }));
        const real = worst ? most * (1 - a) - less * (1 + b) : most * (1 + a) - less * (1 - b);
        const stated = most - less;
        expect(real).toBeLessThanOrEqual(stated * band * (1 + 1e-9));
        if (Number.isFinite(band)) expect(real).toBeGreaterThanOrEqual((stated / band) * (1 - 1e-9));
      }),
    );
  });
});

describe("a circuit that passes as remembered only", () => {
  const way = (size: string) => `way 1 radial "Panel" {
  device  BS EN 60898 B25 6 kA
  cable   multicore line ${size} cpc ${size} cores 3
  route   clipped method C
  serves  appliance
  Ib      15 A
}`;
  const said = (size: string) =>
    findingsOf(inSetting(way(size)).text).filter(({ check }) => check === "design/passes-as-remembered");

  it("says so as information and names what to look up", () => {
    const [found] = said("2.5 mm²");
    expect(found?.severity).toBe("information");
    expect(found?.message).toContain("not at the unfavourable end: look up BS 7671:2018+A2:2022, Table 4D2A");
    expect(said("4 mm²")).toEqual([]);
  });
});
