import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { insulationRule, parallelInsulation, reducedTestVoltage } from "../../server/calc/insulation.ts";
import { working } from "../../server/calc/result.ts";
import { editions } from "../../server/tables/editions.ts";
import { edition, half, recent } from "./helpers.ts";

const mega = 1e6;

describe("minima", () => {
  // Electrical Wholesaler, May 2023: 500 V and 1 MΩ, reduced to 250 V with equipment; Table 64 as a railway authority prints it.
  it.each([
    ["selv-pelv", 250, 0.5],
    ["up-to-500", 500, 1],
    ["above-500", 1000, 1],
  ] as const)("%s: %i V, %f MΩ", (kind, volts, megohms) => {
    const { minimum, testVoltage } = insulationRule(kind, recent);
    expect([testVoltage.value, minimum.value]).toEqual([volts, megohms * mega]);
    expect(minimum.source.standing).toBe("quoted");
    expect(reducedTestVoltage().value).toBe(250);
  });

  it("of the 16th Edition were half a megohm for 230 V circuits", () => {
    const old = edition("BS 7671:2001");
    expect(insulationRule("up-to-500", old).minimum).toMatchObject({
      value: 0.5 * mega,
      source: { standing: "quoted" },
    });
    expect(insulationRule("selv-pelv", old).minimum.source.standing).toBe("memory");
  });

  it("agree with what each edition says of itself", () => {
    for (const one of editions) {
      expect(insulationRule("up-to-500", one).minimum.value).toBe(one.insulationMinimum.value);
    }
  });
});

describe("circuits tested together", () => {
  // Exam-preparation question bank, initial verification.
  it.each([
    [[40, 36], 19, 0],
    [[40, 50, 100, 100], 15.38, 2],
    [[176, 20, 162, 134, 178], 13, 0],
  ])("%j MΩ make %f MΩ", (parts, published, decimals) => {
    const value = parallelInsulation(parts.map((part) => part * mega))?.value ?? Number.NaN;
    expect(Math.abs(value / mega - published)).toBeLessThanOrEqual(half(decimals));
  });

  it("never exceed the least, and each one more lowers the total", () => {
    const resistance = fc.double({ min: 1, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(fc.array(resistance, { minLength: 1 }), resistance, (parts, extra) => {
        const value = parallelInsulation(parts)?.value ?? Number.NaN;
        expect(value).toBeLessThanOrEqual(Math.min(...parts) * (1 + 1e-9));
        expect(parallelInsulation([...parts, extra])?.value).toBeLessThan(value);
      }),
    );
  });

  it("at the ends: none, a dead short, all open", () => {
    expect(parallelInsulation([])).toBeUndefined();
    expect(parallelInsulation([0, 200 * mega])?.value).toBe(0);
    expect(parallelInsulation([Number.POSITIVE_INFINITY])?.value).toBe(Number.POSITIVE_INFINITY);
  });

  it("show their working", () => {
    expect(working(parallelInsulation([200 * mega, 200 * mega])?.steps ?? [])).toBe(
      "R = 1 / Σ (1/Ri) = 1 / (1/200 MΩ + 1/200 MΩ) = 100 MΩ",
    );
  });
});
