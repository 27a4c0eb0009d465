/** Readings that are each accepted, and together follow a fault: how the points differ shows it, never how high all are. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { departures, diagnosePattern, isSound } from "../../server/diagnosis/index.ts";
import { limitOf, type Sheet, usualAccuracy } from "../../server/diagnosis/sheet.ts";
import { check } from "../../server/library/index.ts";
import { random } from "../helpers/random.ts";
import { inSetting } from "../helpers/sample.ts";
import { ringOf, sheetOf } from "./helpers.ts";

const ring = ringOf(60, [8, 16, 24, 33, 42, 51]);

/** Anywhere within the meter's accuracy, by a seed. */
function meterOf(seed: number): (ohms: number) => number {
  const next = random(seed);
  return (ohms) => ohms + (2 * next() - 1) * limitOf(usualAccuracy, ohms);
}

const raised = (sheet: Sheet, by: number, which: RegExp): Sheet => ({
  ...sheet,
  readings: sheet.readings.map((reading) =>
    which.test(reading.name) ? { ...reading, value: reading.value + by } : reading,
  ),
});

describe("readings that are each within tolerance", () => {
  it.each([
    ["s2", "s4", 8],
    ["s1", "s3", 8],
  ])("show a cable across the ring from %s to %s", (from, to, length) => {
    const sheet = sheetOf(ring, { faults: [{ kind: "bridge", from, to, length }] });
    expect(Math.max(...departures(sheet).map(Math.abs))).toBeLessThan(0.05);
    expect(diagnosePattern(sheet)?.explanations[0]?.sentence).toMatch(
      new RegExp(`A cable of about [789] m bridges the ring between ${from} and ${to}\\.`),
    );
  });

  it.each([/^r/, /^L-N/, /^L-E/, /^L-/, /./])("show nothing where the meter reads high or low for %s", (which) => {
    for (const by of [-0.03, -0.02, 0.02, 0.04])
      expect(diagnosePattern(raised(sheetOf(ring), by, which))).toBeUndefined();
  });

  it("show nothing by a meter's errors, nor by legs that are not as long as drawn", () => {
    const share = fc.double({ min: 0.9, max: 1.1, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 1 }), fc.array(share, { minLength: 7, maxLength: 7 }), (seed, shares) => {
        const legs = ring.legs.map((leg, at) => ({ ...leg, length: leg.length * (shares[at] ?? 1) }));
        const sheet = sheetOf(ring, { meter: meterOf(seed) }, { ...ring, legs });
        expect(diagnosePattern(sheet)).toBeUndefined();
      }),
      { numRuns: 150 },
    );
  });
});

/** What ngspice measured of rings with these faults, each reading then out by at most 2 % and a digit. */
describe("in a schedule", () => {
  const found = (cable: string, run: string, ends: string, points: readonly string[]) => {
    const [r1, rn, r2] = ends.split(" ");
    const lines = points.map((at, index) => `at S${index + 1} L-N ${at.replace(" ", " Ω L-E ")} Ω`);
    const way = `way 1 ring "Sockets" {
  cable ${cable}
  run ${run}
  dead 2026-03-04 {
    ends r1 ${r1} Ω rn ${rn} Ω r2 ${r2} Ω
    ${lines.join("\n    ")}
  }
}`;
    return check(inSetting(way, { stage: "installed" }).text)
      .files.flatMap(({ findings }) => findings)
      .filter((one) => /^(diagnosis|ring)/.test(one.check));
  };
  const alike = "singles 70 °C line 2.5 mm² cpc 2.5 mm²";

  it("a figure of eight is a remark, and says that each reading is accepted", () => {
    const run = "A 9 m S1 9 m S2 10 m S3 3 m S4 9 m S5 3 m A";
    const points = ["0.12 0.12", "0.12 0.14", "0.12 0.13", "0.17 0.16", "0.14 0.15"];
    const [said, ...more] = found(alike, run, "0.26 0.26 0.27", points);
    expect(more).toEqual([]);
    expect(said?.severity).toBe("information");
    expect(said?.message).toMatch(/^Each reading is within 0\.05\d* Ω .* bridges the ring between S3 and S5\./);
    expect(said?.related.map(({ message }) => message).join("\n")).toMatch(/2\. The point is on .* spur .* at S4/);
  });

  it("legs that were not crossed rise to the middle, and the joints are made anew", () => {
    const points = ["0.08 0.08", "0.15 0.14", "0.13 0.15", "0.09 0.10"];
    const [said] = found(alike, "A 6 m S1 10 m S2 3 m S3 10 m S4 7 m A", "0.25 0.27 0.26", points);
    expect(said?.message).toMatch(/^Each reading is within .* legs were not crossed at the board/);
    expect(said?.related.at(-1)?.message).toMatch(
      /join the line of each leg to the neutral, then protective conductor of the other leg/,
    );
  });

  it("a sound ring with the same errors raises nothing", () => {
    const points = ["0.12 0.14", "0.12 0.13", "0.14 0.12", "0.13 0.13"];
    expect(found(alike, "A 6 m S1 10 m S2 3 m S3 10 m S4 7 m A", "0.25 0.27 0.26", points)).toEqual([]);
  });
});

it("readings that a sound circuit gives as well can show it, too", () => {
  const sheet = sheetOf(ringOf(60, [6, 12, 18, 24, 30, 36, 42, 48, 54]), {
    faults: [{ kind: "bridge", from: "s2", to: "s5", length: 10 }],
  });
  expect([isSound(sheet), diagnosePattern(sheet)?.explanations[0]?.id]).toEqual([true, "bridge"]);
});
