import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { diagnose } from "../../server/diagnosis/index.ts";
import { limitOf, usualAccuracy } from "../../server/diagnosis/sheet.ts";
import { anyCircuit } from "./circuits.ts";
import { ringOf, sheetOf } from "./helpers.ts";

/** Each reading anywhere within the meter's accuracy, by a list of shares of it. */
function meterOf(errors: readonly number[]): (ohms: number) => number {
  let at = 0;
  return (ohms) => {
    const error = errors[at++ % errors.length] ?? 0;
    return Number.isFinite(ohms) ? Math.max(0, ohms + error * limitOf(usualAccuracy, ohms)) : ohms;
  };
}

const errors = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 41, maxLength: 41 });

describe("a sound circuit needs no explanation", () => {
  it("with any errors within the accuracy of the meter", () => {
    fc.assert(
      fc.property(anyCircuit(12), errors, (circuit, shares) => {
        expect(diagnose(sheetOf(circuit, { meter: meterOf(shares) }))).toEqual({ fits: true, explanations: [] });
      }),
      { numRuns: 600 },
    );
  });

  it("with cable a fifth longer or shorter than drawn, or warmer", () => {
    const share = fc.double({ min: 0.8, max: 1.25, noNaN: true });
    fc.assert(
      fc.property(anyCircuit(12), share, errors, (circuit, by, shares) => {
        const legs = circuit.legs.map((leg) => ({ ...leg, length: leg.length * by }));
        const sheet = sheetOf(circuit, { meter: meterOf(shares.map((error) => error / 2)) }, { ...circuit, legs });
        expect(diagnose(sheet).fits).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});

describe("an instrument's own accuracy", () => {
  it("finds what the usual passes over", () => {
    const ring = ringOf(60, [15, 30, 45]);
    const sheet = sheetOf(ring, { faults: [{ kind: "joint", conductor: "line", leg: 1, ohms: 0.06 }] });
    expect(diagnose(sheet).fits).toBe(true);
    const fine = diagnose({ ...sheet, accuracy: { share: 0.005, digits: 0.006 } });
    expect(fine.fits).toBe(false);
    expect(fine.explanations[0]?.id).toBe("joint-line");
  });
});
