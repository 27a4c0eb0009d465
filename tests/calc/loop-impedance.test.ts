import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inParallel, totalLoop } from "../../server/calc/loop-impedance.ts";
import { cpcRatio, longestSpur } from "../../server/calc/ring.ts";
import { resistanceBetween } from "../helpers/resistance.ts";

const of = (value: number) => ({ value, unit: "Ω", steps: [], source: { ref: "read", standing: "quoted" } }) as const;

describe("worked examples", () => {
  // Electrical inspection, testing and certification practice question: Zs 2.0, Ze 1.5.
  it("Zs 2.0 with Ze 1.5 leaves 0.5 Ω", () => {
    expect(totalLoop(1.5, 0.5).value).toBeCloseTo(2, 9);
  });

  // Newsgroup thread about a domestic test report: Ze 0.17; sockets R2 0.66, Zs 1.31; immersion R2 0.01, Zs 0.41.
  it("a report whose R2 does not fit its Zs", () => {
    const sockets = 1.14;
    expect(totalLoop(0.17, sockets).value).toBeCloseTo(1.31, 9);
    expect(0.66 / (sockets - 0.66)).toBeLessThan(0.9 * (cpcRatio(2.5, 1.5)?.value ?? 0));
    expect(totalLoop(0.17, 0.24).value).toBeCloseTo(0.41, 9);
  });

  // Zs and parallel paths (forum): 0.2 at the board, R1 and R2 0.4 each, a path of 0.4 beside R2.
  it("a parallel path brings 1.0 Ω down to 0.8", () => {
    expect(totalLoop(0.2, 0.4 + 0.4).value).toBeCloseTo(1, 9);
    const r2 = inParallel(of(0.4), of(0.4)).value;
    expect(r2).toBeCloseTo(0.2, 9);
    expect(totalLoop(0.2, 0.4 + r2).value).toBeCloseTo(0.8, 9);
  });

  // R1+R2 readings (forum): Ze 0.35 with 1.06 Ω makes 1.41, where 0.28 Ω was read.
  it("a shower circuit cannot read below its Ze without a reason", () => {
    expect(totalLoop(0.35, 1.06).value).toBeCloseTo(1.41, 9);
    expect(totalLoop(0.35, 0).value).toBeGreaterThan(0.28);
  });

  // Ring finals and fused spurs (forum, quoting the guide): a ring of 106 m, 53 m to the furthest point, spur to 53/8.
  it("a spur from the board of a 106 m ring is at most an eighth of 53 m", () => {
    expect(longestSpur(106 / 2)).toMatchObject({ value: 6.625, unit: "m" });
  });
});

it("a path beside R2 never raises it, and is what the network solver finds", () => {
  const resistance = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
  fc.assert(
    fc.property(resistance, resistance, (r2, path) => {
      const value = inParallel(of(r2), of(path)).value;
      expect(value).toBeLessThan(Math.min(r2, path));
      const network = [
        { from: "a", to: "b", ohms: r2 },
        { from: "a", to: "b", ohms: path },
      ];
      expect(resistanceBetween(network, "a", "b") / value).toBeCloseTo(1, 9);
    }),
  );
  expect(inParallel(of(0), of(0.4)).value).toBe(0);
});
