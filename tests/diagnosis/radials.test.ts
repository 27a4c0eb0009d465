import { describe, expect, it } from "vitest";
import type { CircuitRuns } from "../../server/calc/circuit-network.ts";
import { diagnose } from "../../server/diagnosis/index.ts";
import type { Sheet } from "../../server/diagnosis/sheet.ts";
import { radialOf, type Simulated, sheetOf } from "./helpers.ts";

const radial = radialOf([8, 6, 7, 9]);

const times = (circuit: CircuitRuns, by: number): CircuitRuns => ({
  ...circuit,
  legs: circuit.legs.map((leg) => ({ ...leg, length: leg.length * by })),
});

const changed = (sheet: Sheet, change: (value: number, at: number) => number): Sheet => ({
  ...sheet,
  readings: sheet.readings.map((reading, at) => ({ ...reading, value: change(reading.value, at) })),
});

describe("a radial", () => {
  const faulty: readonly (readonly [string, Simulated, string, RegExp])[] = [
    [
      "joint in the line",
      { faults: [{ kind: "joint", conductor: "line", leg: 2, ohms: 0.4 }] },
      "joint-line",
      /joint of about 0\.4\d? Ω lies in the line between p2 and p3/,
    ],
    [
      "joint in the protective conductor",
      { faults: [{ kind: "joint", conductor: "cpc", leg: 1, ohms: 0.4 }] },
      "joint-cpc",
      /lies in the protective conductor between p1 and p2/,
    ],
    [
      "contact at a point on the way",
      { faults: [{ kind: "contact", conductor: "line", place: "p2", ohms: 0.5 }] },
      "contact-line",
      /poor contact of about 0\.5\d? Ω at p2/,
    ],
    [
      "protective conductor open",
      { faults: [{ kind: "open", conductors: ["cpc"], leg: 2 }] },
      "open-cpc",
      /protective conductor is open between p2 and p3/,
    ],
    [
      "metalwork beside the protective conductor",
      { faults: [{ kind: "metal", from: "board first leg", to: "p4", ohms: 0.02 }] },
      "metal",
      /Bonded metalwork .* between the board and p4/,
    ],
  ];
  it.each(faulty)("%s", (_, simulated, kind, says) => {
    const [first] = diagnose(sheetOf(radial, simulated)).explanations;
    expect(first?.id).toBe(kind);
    expect(first?.sentence).toMatch(says);
  });

  it("leads that were not nulled", () => {
    const sheet = changed(sheetOf(radial), (value) => value + 0.2);
    const [first] = diagnose(sheet).explanations;
    expect(first?.id).toBe("leads");
    expect(first?.parameter?.value).toBeCloseTo(0.2, 1);
  });

  it("a length that is wrong by a common factor", () => {
    const [first] = diagnose(sheetOf(radial, {}, times(radial, 2.2))).explanations;
    expect(first?.id).toBe("length");
    expect(first?.parameter?.value).toBeCloseTo(2.2, 1);
  });

  it("a slip of the decimal point", () => {
    const sheet = changed(sheetOf(radial), (value, at) => (at === 6 ? value * 10 : value));
    const [first] = diagnose(sheet).explanations;
    expect(first?.id).toBe("decimal-point");
    expect(first?.sentence).toMatch(/^L-E at p3 is written 10 times too high/);
  });

  it("a smaller protective conductor than written", () => {
    const long = radialOf([18, 16, 17, 19]);
    const actual = { ...long, perMetre: { ...long.perMetre, cpc: 0.0181 } };
    const found = diagnose(sheetOf(long, {}, actual));
    expect(found.explanations[0]?.id).toBe("size-cpc");
    expect(found.explanations[0]?.sentence).toMatch(/is 1 mm² throughout, not the 1\.5 mm²/);
  });
});

describe("few readings", () => {
  it("one reading is explained in many ways, and that is said", () => {
    const far = radialOf([20]);
    const high = sheetOf(far, {}, times(far, 3.4));
    const found = diagnose({ ...high, readings: high.readings.filter(({ name }) => name === "L-E at p1") });
    expect(found.fits).toBe(false);
    expect(found.explanations.filter(({ alike }) => alike).length).toBeGreaterThan(3);
    expect(found.note).toMatch(/cannot tell|Neither/);
    expect(found.nextTest?.telling).toBeGreaterThan(2);
  });

  it("no reading raises nothing", () => {
    expect(diagnose({ ...sheetOf(radial), readings: [] })).toEqual({ fits: true, explanations: [] });
  });
});

describe("readings that nothing explains", () => {
  it("are said to be so", () => {
    const jumble = [2.4, 0.1, 1.7, 0.3, 0.9, 3.1, 0.2, 1.1];
    const found = diagnose(changed(sheetOf(radial), (_, at) => jumble[at] ?? 0));
    expect(found.explanations[0]?.fits).toBe(false);
    expect(found.note).toMatch(/Nothing that was tried accounts for all the readings/);
  });
});
