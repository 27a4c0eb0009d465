import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  breakingCapacity,
  conditionalRating,
  faultCurrent,
  impedanceOf,
  threePhaseFault,
} from "../../server/calc/fault-current.ts";

describe("prospective fault current", () => {
  // Prospective fault current calculation (course lesson), and a socket at 247 V measured (forum): nearest ampere.
  it.each([
    [230, 0.28, 821],
    [230, 0.35, 657],
    [230, 0.2, 1150],
    [247, 0.38, 650],
    // The reply that insists on the nominal voltage.
    [230, 0.38, 605],
  ])("%i V and %f Ω give %i A", (voltage, impedance, published) => {
    expect(Math.abs(faultCurrent(voltage, impedance).value - published)).toBeLessThanOrEqual(0.5);
  });

  // Prospective fault current (training blog) prints √3 as 1.74; another page 1.723.
  it("on three phases uses √3, not the published 1.74, or doubles", () => {
    expect(threePhaseFault(1000, "root3").value).toBeCloseTo(1732.05, 2);
    expect(threePhaseFault(1000, "root3").value).not.toBeCloseTo(1740, 0);
    expect(threePhaseFault(1000)).toMatchObject({ value: 2000, source: { standing: "practice" } });
  });

  it("turns back into the impedance it came from", () => {
    const positive = fc.double({ min: 0.001, max: 1000, noNaN: true });
    fc.assert(
      fc.property(positive, positive, (voltage, impedance) => {
        expect(impedanceOf(voltage, faultCurrent(voltage, impedance).value).value / impedance).toBeCloseTo(1, 12);
      }),
    );
    expect(faultCurrent(230, 0).value).toBe(Number.POSITIVE_INFINITY);
  });

  it("is never less doubled than by √3", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e5, noNaN: true }), (current) => {
        expect(threePhaseFault(current).value).toBeGreaterThanOrEqual(threePhaseFault(current, "root3").value);
      }),
    );
  });
});

describe("breaking capacity", () => {
  // Guide to the Wiring Regulations (17th Edition), p. 48: fault ratings of common devices.
  it.each([
    [{ standard: "BS EN 60898", category: "6" }, 6000],
    [{ standard: "BS EN 61009-1", category: "10 kA" }, 10_000],
    [{ standard: "BS 3871", category: "M9" }, 9000],
    [{ standard: "BS 3036", category: "S4A" }, 4000],
    [{ standard: "BS 3036" }, 1000],
    [{ standard: "BS 1361", category: "II" }, 33_000],
    [{ standard: "BS 88-2", category: "6", voltage: 400 } as const, 80_000],
  ])("%o: %i A", (device, amperes) => {
    expect(breakingCapacity(device)?.value).toBe(amperes);
  });

  it.each([
    [{ standard: "BS EN 60898" }],
    [{ standard: "BS EN 60898", category: "7" }],
    [{ standard: "BS 88-3" }],
    [{ standard: "BS EN 60947-2", category: "6" }],
    [{ standard: "BS 88-2", category: "6" }],
  ])("%o does not tell", (device) => {
    expect(breakingCapacity(device)).toBeUndefined();
  });

  it("carries the standing of its cell", () => {
    expect(breakingCapacity({ standard: "BS EN 60898", category: "25" })?.source.standing).toBe("memory");
    expect(breakingCapacity({ standard: "BS EN 60898", category: "6" })?.source.standing).toBe("quoted");
  });

  // A forum post on BS EN 61439-3 Annex ZB: conditional 16 kA behind a 100 A service fuse.
  it("of a consumer unit is 16 kA on condition", () => {
    expect(conditionalRating().value).toBe(16_000);
  });
});
