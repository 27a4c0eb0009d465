import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as show from "../../server/calc/result.ts";

describe("numbers as a person reads them", () => {
  it.each([
    [show.ohms(0.3705), "0.37 Ω"],
    [show.ohms(0.0787), "0.079 Ω"],
    [show.ohms(0), "0.00 Ω"],
    [show.ohms(0.4), "0.40 Ω"],
    [show.ohms(14.57), "14.57 Ω"],
    [show.ohms(1666.67), "1667 Ω"],
    [show.ohms(Number.POSITIVE_INFINITY), "∞ Ω"],
    [show.milliohms(0.01951), "19.51 mΩ"],
    [show.megohms(200e6), "200 MΩ"],
    [show.amps(13.5), "13.5 A"],
    [show.kiloamps(16_000), "16 kA"],
    [show.milliamps(0.03), "30 mA"],
    [show.volts(218.5), "218.5 V"],
    [show.metres(22), "22 m"],
    [show.squareMillimetres(2.5), "2.5 mm²"],
    [show.seconds(0.4), "0.4 s"],
    [show.milliseconds(0.0184), "18.4 ms"],
    [show.degrees(20), "20 °C"],
    [show.percent(3), "3 %"],
  ])("%s", (written, expected) => {
    expect(written).toBe(expected);
  });
});

describe("rounding", () => {
  // Halves go up as tables print them, whatever binary makes of them: 230/80 = 2.875 is printed 2.88.
  it.each([
    [230 / 80, 2.88],
    [1.005, 1.01],
    [0.437, 0.44],
    [0.364, 0.36],
  ])("%f is %f", (value, expected) => {
    expect(show.round(value, 2)).toBe(expected);
  });

  it("never moves by more than half a unit, cutting never up", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e4, noNaN: true }), fc.integer({ min: 0, max: 4 }), (value, decimals) => {
        const unit = 10 ** -decimals;
        expect(Math.abs(show.round(value, decimals) - value)).toBeLessThanOrEqual(unit / 2 + 1e-7);
        expect(show.truncate(value, decimals)).toBeLessThanOrEqual(value + 1e-7);
        expect(show.truncate(value, decimals)).toBeGreaterThan(value - unit);
      }),
    );
  });
});

it("working reads as a person would write it", () => {
  const steps = [
    show.looked("It", "Table 4D5", "27 A"),
    show.relation("Icn ≥ Ipf", "6 kA", "6.5 kA"),
    show.relation("In ≤ Iz", "20 A", "27 A", true),
    show.remark("distribution circuit: outside Table 41.1"),
  ];
  expect(show.working(steps)).toBe(
    [
      "It = 27 A (Table 4D5)",
      "Icn ≥ Ipf does not hold: 6 kA < 6.5 kA",
      "In ≤ Iz holds: 20 A ≤ 27 A",
      "distribution circuit: outside Table 41.1",
    ].join("\n"),
  );
});

it("working leaves out what repeats", () => {
  const steps = [
    show.step("Zs = U0 × Cmin / Ia", "230 V × 0.95 / 160 A", "1.37 Ω"),
    show.step("r", "", "1 Ω"),
    show.step("x", "2", "2"),
  ];
  expect(show.working(steps)).toBe("Zs = U0 × Cmin / Ia = 230 V × 0.95 / 160 A = 1.37 Ω\nr = 1 Ω\nx = 2");
});
