import { describe, expect, it } from "vitest";
import { residuals } from "../../server/calc/minimum-size.ts";
import { electrodeAdvice, rcdLoopLimit, touchVoltage } from "../../server/calc/rcd-loop-limit.ts";
import { rcdCovers, rcdTime, rcdTripBand } from "../../server/calc/rcd-time.ts";
import { edition, recent } from "./helpers.ts";

const general = { standard: "BS EN 61008", delayed: false, edition: recent };
const older = edition("BS 7671:2018");

describe("break times", () => {
  // Trade article, Table 1: tripping times at 1, 2 and 5 times the rated current.
  it.each([
    ["BS EN 61008", false, 1, 0.3, undefined],
    ["BS EN 61009-1", false, 2, 0.15, undefined],
    ["BS EN 62423", false, 5, 0.04, undefined],
    // Installation tester handbook, p. 31: window of a delay type, 130 to 500 ms and 50 to 150 ms.
    ["BS EN 61008", true, 1, 0.5, 0.13],
    ["BS EN 61008", true, 5, 0.15, 0.05],
    ["BS EN 61008", true, 2, 0.2, 0.06],
    ["BS 4293", false, 1, 0.2, undefined],
    ["BS 7288", false, 5, 0.04, undefined],
  ])("%s delayed %s at %f: %f s, least %s", (standard, delayed, multiple, greatest, least) => {
    const window = rcdTime({ standard, delayed, multiple, edition: recent });
    expect([window?.greatest?.value, window?.least?.value]).toEqual([greatest, least]);
  });

  it("carry the standing of each cell", () => {
    const window = rcdTime({ ...general, delayed: true, multiple: 2 });
    expect([window?.greatest?.source.standing, window?.least?.source.standing]).toEqual(["quoted", "memory"]);
  });

  it.each([
    ["BS 4293", false, 2],
    ["BS 4293", true, 1],
    ["BS EN 61008", false, 3],
    ["BS EN 60898", false, 1],
  ])("%s delayed %s at %f has none", (standard, delayed, multiple) => {
    expect(rcdTime({ standard, delayed, multiple, edition: recent })).toBeUndefined();
  });

  it("at half the rated current must not trip for the length of the test", () => {
    expect(rcdTime({ ...general, multiple: 0.5 })).toMatchObject({
      least: { value: 1, source: { standing: "practice" } },
    });
    expect(rcdTime({ ...general, multiple: 0.5 })?.greatest).toBeUndefined();
    expect(rcdTime({ ...general, delayed: true, multiple: 0.5 })?.least?.value).toBe(2);
  });

  // IET Wiring Matters 91, July 2022: one test at IΔn since Amendment 2; half, one and five times before.
  it("are asked for by edition", () => {
    const required = (of: typeof recent) =>
      [0.5, 1, 2, 5].filter((multiple) => rcdTime({ ...general, multiple, edition: of })?.required);
    expect(required(recent)).toEqual([1]);
    expect(required(older)).toEqual([0.5, 1, 5]);
  });
});

describe("trip current", () => {
  // Tester handbooks: 50 to 100 % for AC, 35 to 140 % for A, to 200 % at 10 mA.
  it.each([
    ["AC", 0.03, 0.015, 0.03],
    ["A", 0.03, 0.0105, 0.042],
    ["A", 0.01, 0.0035, 0.02],
  ] as const)("type %s of %f A trips between %f and %f A", (type, rated, least, greatest) => {
    expect(rcdTripBand(type, rated)?.least.value).toBeCloseTo(least, 12);
    expect(rcdTripBand(type, rated)?.greatest.value).toBeCloseTo(greatest, 12);
  });

  // F includes A and B includes F, so that both trip on pulsating current within the band of A.
  it("is for F and B that of A", () => {
    for (const type of ["F", "B"] as const)
      expect(rcdTripBand(type, 0.03)?.greatest.value).toBe(rcdTripBand("A", 0.03)?.greatest.value);
  });

  // IET Wiring Matters 91: F includes A, B includes F.
  it("types cover one another in order", () => {
    const types = ["AC", "A", "F", "B"] as const;
    for (const [i, fitted] of types.entries())
      for (const [j, needed] of types.entries()) expect(rcdCovers(fitted, needed)).toBe(i >= j);
  });
});

describe("earth electrodes", () => {
  // Some advice on testing (forum): greatest RA for four ratings.
  it.each([
    [0.03, 1667],
    [0.1, 500],
    [0.3, 167],
    [0.5, 100],
  ])("%f A allows %i Ω", (residual, ohms) => {
    expect(rcdLoopLimit(residual)?.value).toBe(ohms);
  });

  // Extraneous-conductive-parts (forum) cuts 1666.7 to 1666; the table prints 1667.
  it("30 mA is 1667 as printed, not the published 1666", () => {
    expect(rcdLoopLimit(0.03)?.value).toBe(1667);
    expect(Math.floor(50 / 0.03)).toBe(1666);
  });

  it("keep how each row is known", () => {
    const standings = [0.01, 0.03, 0.1, 0.3, 0.5].map((residual) => rcdLoopLimit(residual)?.source.standing);
    expect(standings).toEqual(["computed", "quoted", "quoted", "computed", "computed"]);
    expect(rcdLoopLimit(0.25)).toMatchObject({ value: 200, source: { standing: "computed" } });
    expect(rcdLoopLimit(0)).toBeUndefined();
    expect(electrodeAdvice().value).toBe(200);
  });

  // Exam-preparation question bank: 179, 172 and 168 Ω, mean 173; 100 mA is the largest that suits; 51.9 V with 300 mA.
  it("173 Ω suits 100 mA and not 300 mA", () => {
    const mean = (179 + 172 + 168) / 3;
    expect(mean).toBe(173);
    expect(touchVoltage(mean, 0.3).value).toBeCloseTo(51.9, 9);
    const suited = residuals.filter((residual) => mean <= (rcdLoopLimit(residual)?.value ?? 0));
    expect(suited.at(-1)).toBe(0.1);
  });
});
