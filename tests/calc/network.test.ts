import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Resistor } from "../../server/calc/network.ts";
import { resistanceBetween } from "../helpers/resistance.ts";
import { startNgspice } from "./ngspice.ts";

const measured = await startNgspice();
const open = Number.POSITIVE_INFINITY;

describe("two-point resistance", () => {
  // Textbook identities: series, parallel, and a balanced bridge, whose middle carries no current.
  it.each<[string, Resistor[], number]>([
    ["series", [r("a", "c", 1), r("c", "b", 2)], 3],
    ["parallel", [r("a", "b", 6), r("b", "a", 3)], 2],
    ["balanced bridge", [r("a", "c", 1), r("a", "d", 1), r("c", "b", 1), r("d", "b", 1), r("c", "d", 0.3)], 1],
    ["joined by nothing", [r("a", "c", 1), r("d", "b", 1)], open],
    ["through an open", [r("a", "c", 1), r("c", "b", open)], open],
    ["through a joint", [r("a", "c", 0), r("c", "b", 0.5)], 0.5],
    ["shorted", [r("a", "b", 0), r("a", "b", 5)], 0],
    ["with a branch that leads nowhere", [r("a", "b", 4), r("b", "c", 9)], 4],
  ])("%s", (_, resistors, expected) => {
    expect(resistanceBetween(resistors, "a", "b")).toBeCloseTo(expected, 12);
  });

  it("of a node to itself is nothing", () => {
    expect(resistanceBetween([r("a", "b", 1)], "a", "a")).toBe(0);
  });

  it("agrees with ngspice on any network", async () => {
    for (const resistors of fc.sample(anyNetwork(), { numRuns: 100, seed: 60364 })) {
      const expected = await measured(resistors, "0", "1");
      const value = resistanceBetween(resistors, "0", "1");
      if (expected === open) expect(value).toBe(open);
      else expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-9 * expected);
    }
  });

  it("is the same both ways, and never rises when a resistor is added", () => {
    fc.assert(
      fc.property(anyNetwork(), anyResistor(), (resistors, extra) => {
        const value = resistanceBetween(resistors, "0", "1");
        expect(resistanceBetween(resistors, "1", "0")).toBeCloseTo(value, 9);
        expect(resistanceBetween([...resistors, extra], "0", "1")).toBeLessThanOrEqual(value * (1 + 1e-9));
      }),
    );
  });
});

function r(from: string, to: string, ohms: number): Resistor {
  return { from, to, ohms };
}

function anyResistor(): fc.Arbitrary<Resistor> {
  const node = fc.integer({ min: 0, max: 6 });
  return fc
    .tuple(node, node, fc.integer({ min: 1, max: 10_000 }))
    .filter(([from, to]) => from !== to)
    .map(([from, to, thousandths]) => r(String(from), String(to), thousandths / 1000));
}

function anyNetwork(): fc.Arbitrary<Resistor[]> {
  return fc.array(anyResistor(), { minLength: 1, maxLength: 15 });
}
