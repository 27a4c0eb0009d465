import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { adiabaticSize, letThroughAtFault, withstand } from "../../server/calc/adiabatic.ts";
import { correctedCapacity, type Method, tabulatedCapacity } from "../../server/calc/capacity.ts";
import { coldLimit } from "../../server/calc/cold-limit.ts";
import { trunkingFill } from "../../server/calc/containment.ts";
import { diversified } from "../../server/calc/diversity.ts";
import { dropTemperatureFactor } from "../../server/calc/drop-figures.ts";
import { faultCurrent, impedanceOf, threePhaseFault } from "../../server/calc/fault-current.ts";
import { loopLimit } from "../../server/calc/loop-limit.ts";
import { ratings, sizes } from "../../server/calc/minimum-size.ts";
import { mainBonding, mainBondingPme, selectedProtective } from "../../server/calc/protective-size.ts";
import { rcdLoopLimit, touchVoltage } from "../../server/calc/rcd-loop-limit.ts";
import { dropPerAmpereMetre, voltageDrop } from "../../server/calc/voltage-drop.ts";
import { diversityShares } from "../../server/tables/diversity-shares.ts";
import { recent } from "./helpers.ts";

/** What must only ever go one way, whatever the figures: a slip in a formula or a table turns one of these round. */

const positive = fc.double({ min: 0.01, max: 500, noNaN: true });
const two = fc.tuple(positive, positive).map((pair) => pair.toSorted((a, b) => a - b) as [number, number]);
const size = fc.constantFrom(...sizes.filter((csa) => csa >= 1 && csa <= 300));
const twoSizes = fc.tuple(size, size).map((pair) => pair.toSorted((a, b) => a - b) as [number, number]);
const noSource = { ref: "", standing: "quoted" } as const;
const k = { value: 115, source: noSource };
/** Where one is not known there is nothing to compare: such figures count as no run. */
const atMost = (one: number | undefined, other: number | undefined) => {
  fc.pre(one !== undefined && other !== undefined);
  expect(one).toBeLessThanOrEqual(other * (1 + 1e-9));
};

describe("cables", () => {
  const cable = fc.record({
    construction: fc.constantFrom("singles", "flat-twin", "multicore", "armoured"),
    insulation: fc.constantFrom(70, 90),
    method: fc.constantFrom<Method[]>("A", "B", "C", "D", "E", "100", "101", "102", "103"),
    loaded: fc.constantFrom(2, 3),
  }) as fc.Arbitrary<Omit<Parameters<typeof tabulatedCapacity>[0], "csa">>;

  it("a bigger one never carries less, never drops more, never runs hotter", () => {
    fc.assert(
      fc.property(cable, twoSizes, positive, (kind, [small, large], Ib) => {
        const [less, more] = [small, large].map((csa) => tabulatedCapacity({ ...kind, csa })?.value);
        atMost(less, more);
        atMost(dropPerAmpereMetre({ ...kind, csa: large })?.value, dropPerAmpereMetre({ ...kind, csa: small })?.value);
        fc.pre(less !== undefined && more !== undefined);
        const hot = (It: number) => dropTemperatureFactor({ It, Iz: It, Ib, insulation: kind.insulation }).value;
        atMost(hot(more), hot(less));
      }),
      { numRuns: 1000 },
    );
  });

  it("conditions only ever take away, except a cooler place", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 30, max: 60 }),
        fc.integer({ min: 1, max: 20 }),
        positive,
        (ambient, circuits, It) => {
          const found = correctedCapacity({
            It: { value: It, source: noSource },
            insulation: 70,
            ambient,
            grouped: { circuits, arrangement: "bunched" },
          });
          atMost("missing" in found ? undefined : found.value, It);
        },
      ),
    );
  });

  it("longer, or more current, is never less drop", () => {
    fc.assert(
      fc.property(size, two, two, (csa, [short, long], [little, much]) => {
        const question = { construction: "multicore", insulation: 70, method: "C", loaded: 2, csa } as const;
        const perAmpereMetre = dropPerAmpereMetre(question);
        fc.pre(perAmpereMetre !== undefined);
        const drop = (current: number, length: number) => voltageDrop({ perAmpereMetre, current, length }).value;
        atMost(drop(little, short), drop(much, short));
        atMost(drop(little, short), drop(little, long));
      }),
    );
  });
});

describe("protective devices", () => {
  it("a larger one never allows a larger loop, and its cold limit follows", () => {
    const kinds = fc.constantFrom(
      ...["B", "C", "D"].map((curve) => ({ standard: "BS EN 60898", curve, list: ratings("breaker") })),
      ...["BS 88-2", "BS 88-3", "BS 3036", "BS 1361"].map((standard) => ({
        standard,
        curve: undefined,
        list: [2, 3, 4, 5, 6, 10, 13, 15, 16, 20, 25, 30, 32, 40, 45, 50, 60, 63, 80, 100, 125, 160, 200],
      })),
    );
    fc.assert(
      fc.property(kinds, fc.nat(), fc.nat(), fc.constantFrom(0.4, 5), ({ standard, curve, list }, one, other, time) => {
        const pair = [list[one % list.length] ?? 0, list[other % list.length] ?? 0].toSorted((a, b) => a - b);
        const [small, large] = pair.map((rating) =>
          loopLimit({ standard, rating, time, U0: 230, edition: recent, ...(curve ? { curve } : {}) }),
        );
        atMost(large?.value, small?.value);
        atMost(large && coldLimit(large).value, small && coldLimit(small).value);
      }),
      { numRuns: 500 },
    );
  });

  it("a coarser RCD never allows more to earth, and more never touches less", () => {
    fc.assert(
      fc.property(two, two, ([fine, coarse], [low, high]) => {
        atMost(rcdLoopLimit(coarse / 1000)?.value, rcdLoopLimit(fine / 1000)?.value);
        atMost(touchVoltage(low, fine / 1000).value, touchVoltage(high, fine / 1000).value);
      }),
    );
  });

  it("a larger breaker or a larger fault never lets less through", () => {
    const fault = fc.double({ min: 300, max: 10_000, noNaN: true });
    fc.assert(
      fc.property(fault, fault, fc.constantFrom<("B" | "C")[]>("B", "C"), (one, other, curve) => {
        const [less, more] = [one, other].toSorted((a, b) => a - b) as [number, number];
        const through = (rating: number, current: number) =>
          letThroughAtFault({ curve, rating, limitingClass: 3 }, current)?.value;
        atMost(through(16, less), through(16, more));
        atMost(through(16, less), through(32, less));
      }),
    );
  });
});

describe("faults", () => {
  it("more impedance is never more current, and three lines never less than one", () => {
    fc.assert(
      fc.property(two, ([low, high]) => {
        atMost(faultCurrent(230, high).value, faultCurrent(230, low).value);
        atMost(impedanceOf(230, high).value, impedanceOf(230, low).value);
        atMost(low, threePhaseFault(low).value);
      }),
    );
  });

  it("more heat never asks for less conductor, and a bigger conductor never stands less", () => {
    fc.assert(
      fc.property(two, fc.double({ min: 0.01, max: 5, noNaN: true }), twoSizes, ([low, high], time, [small, large]) => {
        atMost(adiabaticSize(low, time, k)?.value, adiabaticSize(high, time, k)?.value);
        atMost(adiabaticSize(low, time / 2, k)?.value, adiabaticSize(low, time, k)?.value);
        atMost(withstand(small, k).value, withstand(large, k).value);
      }),
    );
  });

  it("a bigger conductor never has the smaller protective or bonding conductor", () => {
    fc.assert(
      fc.property(twoSizes, ([small, large]) => {
        atMost(selectedProtective(small)?.value, selectedProtective(large)?.value);
        atMost(mainBonding(small)?.value, mainBonding(large)?.value);
        atMost(mainBondingPme(small)?.value, mainBondingPme(large)?.value);
      }),
    );
  });
});

describe("loads and cables together", () => {
  it("one load more is never less demand, and never adds more than itself and its socket", () => {
    const row = fc.constantFrom(...diversityShares.rows.map(({ facts }) => facts));
    fc.assert(
      fc.property(row, fc.array(positive, { maxLength: 6 }), positive, ({ key, column }, currents, extra) => {
        const demand = (all: readonly number[]) => diversified({ purpose: key, column, currents: all }).value;
        atMost(demand(currents), demand([...currents, extra]));
        atMost(demand([...currents, extra]), demand(currents) + extra);
      }),
      { numRuns: 500 },
    );
  });

  it("one cable more never leaves more room in a trunking, nor does the smaller trunking", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), (count) => {
        const fits = (number: number, depth: number) =>
          Number(trunkingFill([{ csa: 2.5, count: number }], { width: 75, depth })?.fits ?? Number.NaN);
        expect(fits(count + 1, 50)).toBeLessThanOrEqual(fits(count, 50));
        expect(fits(count, 50)).toBeLessThanOrEqual(fits(count, 75));
      }),
    );
  });
});
