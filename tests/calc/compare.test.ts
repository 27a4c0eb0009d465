import { describe, expect, it } from "vitest";
import { exceeds, fallsShort, greatestBy } from "../../server/calc/compare.ts";

describe("a figure against its limit", () => {
  // 1.4 × 0.03 is 0.041999999999999996 in binary, and 0.1 + 0.2 is 0.30000000000000004: neither is any other figure.
  it.each([
    [1.4 * 0.03, 0.042, false, false],
    [0.1 + 0.2, 0.3, false, false],
    [0.3001, 0.3, true, false],
    [0.2999, 0.3, false, true],
    [-0.1 - 0.2, -0.3, false, false],
    [-0.2999, -0.3, true, false],
    [0, 0, false, false],
  ])("%d against %d: over %s, short %s", (value, limit, over, short) => {
    expect([exceeds(value, limit), fallsShort(value, limit)]).toEqual([over, short]);
  });
});

describe("the one with the greatest figure", () => {
  const figures = { a: 2, b: undefined, c: 5, d: 5, e: -1, f: 0 };
  const of = (...names: readonly (keyof typeof figures)[]) => greatestBy(names, (name) => figures[name]);

  it.each([
    [["a", "c"], "c", 5],
    [["c", "a"], "c", 5],
    [["c", "d"], "c", 5],
    [["d", "c"], "d", 5],
    [["b", "a", "b"], "a", 2],
    [["b", "e"], "e", -1],
    [["f", "b"], "f", 0],
  ] as const)("of %j is %s with %d", (names, one, figure) => expect(of(...names)).toEqual({ one, figure }));

  it("is nobody where none has one", () => expect([of(), of("b")]).toEqual([undefined, undefined]));
});
