import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { depthFactor, groundGrouping, soilFactor } from "../../server/calc/ground.ts";
import { depthFactors, groundGroupingFactors, soilFactors } from "../../server/tables/ground.ts";

const value = (found: { value: number } | { missing: string }) => ("value" in found ? found.value : undefined);
const falls = (all: readonly number[]) => all.every((one, at) => at === 0 || one <= (all[at - 1] ?? 0));
const lies = ["buried", "duct"] as const;

describe("the tables of the ground against their own laws", () => {
  it("a cable direct in the ground carries by 1/√T of what surrounds it: no more than all of it in the ground", () => {
    // IEC 60287: I² is in proportion to 1 / (T of the cable + T of the ground), the latter in proportion to ρ.
    for (const { facts } of soilFactors.rows) {
      const all = Math.sqrt(2.5 / facts.soil);
      // To two decimals, and 0.90 for 3 K·m/W a little on the safe side of it.
      expect(facts.buried).toBeLessThan(all + 0.005);
      if (facts.soil > 2.5) expect(facts.buried).toBeGreaterThan(all - 0.015);
      // A duct and its air are a part that the ground does not change.
      expect(Math.abs(Math.log(facts.duct))).toBeLessThanOrEqual(Math.abs(Math.log(facts.buried)));
    }
  });

  it("the depth counts by ln(4 l / d) of IEC 60287, whatever the cable", () => {
    for (const { facts } of depthFactors.rows) {
      for (const diameter of [15, 30, 60]) {
        const ground = (depth: number) => Math.log((4 * depth) / diameter);
        // A fifth of what keeps the heat in is the cable itself, at whatever depth.
        const itself = ground(700) / 4;
        const law = Math.sqrt((itself + ground(700)) / (itself + ground(facts.depth)));
        expect(Math.abs(facts.buried / law - 1)).toBeLessThan(0.03);
      }
      expect(Math.abs(Math.log(facts.duct))).toBeLessThanOrEqual(Math.abs(Math.log(facts.buried)));
    }
  });

  it("grouping falls with each circuit and rises with each distance", () => {
    for (const lie of lies) {
      const rows = groundGroupingFactors.rows.map(({ facts }) => facts).filter(({ key }) => key === lie);
      expect(rows.map(({ circuits }) => circuits)).toEqual([2, 3, 4, 5, 6]);
      for (const column of ["touching", "d250", "d500"] as const)
        expect(falls(rows.map((row) => row[column]))).toBe(true);
      for (const { touching, d125, d250, d500, d1000 } of rows)
        expect(falls([d1000, d500, d250, d125, touching].filter((one) => one !== null))).toBe(true);
    }
  });
});

describe("between the rows of the ground", () => {
  it("the worse is taken", () => {
    expect(value(soilFactor(1.2, "buried"))).toBe(1.28);
    expect(value(depthFactor(800, "buried"))).toBe(0.97);
    expect(value(groundGrouping(3, "buried", 300))).toBe(0.8);
    expect(value(groundGrouping(3, "buried", 124))).toBe(0.65);
    expect(value(groundGrouping(3, "duct", 200))).toBe(0.75);
    // Of cables 1 m apart direct in the ground nothing is printed: as 0.5 m apart.
    expect(value(groundGrouping(2, "buried", 1500))).toBe(0.9);
  });

  it("what no row covers has no factor", () => {
    expect(soilFactor(3.4, "duct")).toHaveProperty("missing");
    expect(depthFactor(3500, "buried")).toHaveProperty("missing");
    expect(groundGrouping(7, "duct", 0)).toHaveProperty("missing");
  });

  it("worse ground never carries more", () => {
    const worse = fc.tuple(fc.double({ min: 0.2, max: 3, noNaN: true }), fc.double({ min: 0.2, max: 3, noNaN: true }));
    fc.assert(
      fc.property(worse, fc.constantFrom(...lies), ([one, other], lie) => {
        const [good = 0, bad = 0] = [Math.min(one, other), Math.max(one, other)];
        expect(value(soilFactor(good, lie))).toBeGreaterThanOrEqual(value(soilFactor(bad, lie)) ?? 0);
        expect(value(depthFactor(good * 1000, lie))).toBeGreaterThanOrEqual(value(depthFactor(bad * 1000, lie)) ?? 0);
        expect(value(groundGrouping(4, lie, bad * 500))).toBeGreaterThanOrEqual(
          value(groundGrouping(4, lie, good * 500)) ?? 0,
        );
      }),
    );
  });
});
