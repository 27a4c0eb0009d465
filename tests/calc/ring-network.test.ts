import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { conductorNetwork, legEnd, legStart, nodeOf } from "../../server/calc/circuit-network.ts";
import { networkFor, portOf } from "../../server/calc/circuit-readings.ts";
import type { Resistor } from "../../server/calc/network.ts";
import { round } from "../../server/calc/result.ts";
import { expectedSpan, quarterLineCpc, quarterLineNeutral, readingAt, spurAddition } from "../../server/calc/ring.ts";
import { resistanceBetween } from "../helpers/resistance.ts";
import { circuitOf, measurementsOf, type Ring, type RingFault, ringReadings } from "../helpers/ring.ts";
import { startNgspice } from "./ngspice.ts";

const measured = await startNgspice();

/** 60 m of 2.5/1.5 mm² cable (7.41 and 12.1 mΩ/m) with six sockets. */
const ring: Ring = {
  length: 60,
  perMetre: { line: 0.00741, neutral: 0.00741, cpc: 0.0121 },
  points: [5, 15, 25, 35, 45, 55],
};
const healthyN = "0.22 0.22 0.22 0.22 0.22 0.22";
const healthyE = "0.28 0.29 0.29 0.29 0.29 0.28";
const bridge: RingFault = { kind: "bridge", from: 1, to: 4, length: 5 };
const lineOpen: RingFault = { kind: "open", conductors: ["line"], stretch: 3 };

/**
 * Fault patterns of a ring final, worked out apart from this code by nodal analysis, at 20 °C, to two decimals as a meter
 * shows them: ends r1, rn, r2, then the line-neutral and the line-cpc round.
 */
const patterns: readonly (readonly [string, Partial<Ring>, string, string, string])[] = [
  ["healthy", {}, "0.44 0.44 0.73", healthyN, healthyE],
  [
    "line open",
    { faults: [lineOpen] },
    "∞ 0.44 0.73",
    "0.44 0.44 0.44 0.44 0.44 0.44",
    "0.70 0.66 0.61 0.61 0.66 0.70",
  ],
  [
    "neutral open",
    { faults: [{ kind: "open", conductors: ["neutral"], stretch: 3 }] },
    "0.44 ∞ 0.73",
    "0.44 0.44 0.44 0.44 0.44 0.44",
    healthyE,
  ],
  [
    "cpc open",
    { faults: [{ kind: "open", conductors: ["cpc"], stretch: 3 }] },
    "0.44 0.44 ∞",
    healthyN,
    "0.47 0.51 0.56 0.56 0.51 0.47",
  ],
  [
    "all three open",
    { faults: [{ kind: "open", conductors: ["line", "neutral", "cpc"], stretch: 3 }] },
    "∞ ∞ ∞",
    "∞ ∞ ∞ ∞ ∞ ∞",
    "∞ ∞ ∞ ∞ ∞ ∞",
  ],
  [
    "0.5 Ω joint in line",
    { faults: [{ kind: "joint", conductor: "line", stretch: 3, ohms: 0.5 }] },
    "0.94 0.44 0.73",
    "0.30 0.30 0.30 0.30 0.30 0.30",
    "0.41 0.40 0.39 0.39 0.40 0.41",
  ],
  [
    "0.5 Ω joint in cpc",
    { faults: [{ kind: "joint", conductor: "cpc", stretch: 3, ohms: 0.5 }] },
    "0.44 0.44 1.23",
    healthyN,
    "0.34 0.36 0.37 0.37 0.36 0.34",
  ],
  [
    "0.3 Ω contact at one outlet",
    { faults: [{ kind: "contact", conductor: "line", point: 3, ohms: 0.3 }] },
    "0.44 0.44 0.73",
    "0.22 0.22 0.22 0.52 0.22 0.22",
    "0.28 0.29 0.29 0.59 0.29 0.28",
  ],
  [
    "5 m spur",
    { faults: [{ kind: "spur", from: 2, length: 5 }] },
    "0.44 0.44 0.73",
    `${healthyN} 0.30`,
    `${healthyE} 0.39`,
  ],
  [
    "spur off that spur",
    {
      faults: [
        { kind: "spur", from: 2, length: 5 },
        { kind: "spur", from: 6, length: 5 },
      ],
    },
    "0.44 0.44 0.73",
    `${healthyN} 0.30 0.37`,
    `${healthyE} 0.39 0.49`,
  ],
  ["bridged", { faults: [bridge] }, "0.25 0.25 0.41", "0.13 0.13 0.21 0.21 0.13 0.13", "0.16 0.17 0.28 0.28 0.17 0.16"],
  [
    "bridged, and line open inside",
    { faults: [bridge, lineOpen] },
    "0.26 0.25 0.41",
    "0.13 0.13 0.24 0.24 0.13 0.13",
    "0.16 0.17 0.31 0.31 0.17 0.16",
  ],
  [
    "line and neutral reversed at one point",
    { faults: [{ kind: "swapped", pair: ["line", "neutral"], point: 3 }] },
    "0.44 0.44 0.73",
    healthyN,
    "0.28 0.29 0.29 ∞ 0.29 0.28",
  ],
  [
    "line and cpc reversed at one point",
    { faults: [{ kind: "swapped", pair: ["line", "cpc"], point: 3 }] },
    "0.44 0.44 0.73",
    "0.22 0.22 0.22 ∞ 0.22 0.22",
    healthyE,
  ],
  [
    "neutral and cpc reversed at one point",
    { faults: [{ kind: "swapped", pair: ["neutral", "cpc"], point: 3 }] },
    "0.44 0.44 0.73",
    "0.22 0.22 0.22 ∞ 0.22 0.22",
    "0.28 0.29 0.29 ∞ 0.29 0.28",
  ],
  [
    "legs joined wrongly",
    { links: "same-leg" },
    "0.44 0.44 0.73",
    "0.07 0.17 0.22 0.22 0.17 0.07",
    "0.09 0.22 0.28 0.28 0.22 0.09",
  ],
  [
    "one of the two links",
    { links: "one" },
    "0.44 0.44 0.73",
    "0.44 0.44 0.44 0.44 0.44 0.44",
    "0.70 0.66 0.61 0.56 0.51 0.47",
  ],
];

describe("fault patterns", () => {
  it.each(patterns)("%s", async (_, change, ends, lineNeutral, lineCpc) => {
    const faulty = { ...ring, ...change };
    const readings = ringReadings(faulty);
    expect(meter(readings.r1, readings.rn, readings.r2)).toBe(ends);
    expect(meter(...readings.lineNeutral)).toBe(lineNeutral);
    expect(meter(...readings.lineCpc)).toBe(lineCpc);
    await expectSameInNgspice(faulty);
  });

  it("legs of two rings crossed at the board read open on both", () => {
    // Each start stays, the far legs change places: a conductor closes only through the other ring's.
    const line = conductorNetwork(circuitOf(ring).circuit, "line");
    const both = [...line.map(renamed(0)), ...line.map(renamed(1))];
    const [start, end] = [nodeOf("line", legStart), nodeOf("line", legEnd)];
    expect(resistanceBetween(both, `${start} of 0`, `${end} of 0`)).toBeCloseTo(60 * 0.00741, 9);
    expect(resistanceBetween(both, `${start} of 0`, `${end} of 1`)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("two hundred rings", () => {
  const rings = fc.sample(anyRing(), { numRuns: 200, seed: 7671 });

  it("read the same in ngspice, to a part in 10⁹", async () => {
    expect(rings.filter(({ faults = [] }) => faults.some(({ kind }) => kind === "spur")).length).toBeGreaterThan(50);
    for (const one of rings) await expectSameInNgspice(one);
  });

  it("when sound, follow the formula at every point, and spurs add their own cable", async () => {
    for (const { faults: _faults, ...sound } of rings) {
      const { length, perMetre, points } = sound;
      const ends = { r1: length * perMetre.line, rn: length * perMetre.neutral, r2: length * perMetre.cpc };
      const spur = { kind: "spur", from: 0, length: 7 } as const;
      const { lineNeutral, lineCpc } = ringReadings({ ...sound, faults: [spur] });
      for (const [index, distance] of points.entries()) {
        const neutral = readingAt(ends.r1, ends.rn, distance / length)?.value ?? Number.NaN;
        const cpc = readingAt(ends.r1, ends.r2, distance / length)?.value ?? Number.NaN;
        expectClose(lineNeutral[index], neutral);
        expectClose(lineCpc[index], cpc);
        const span = expectedSpan(ends.r1, ends.r2);
        expect(cpc).toBeGreaterThanOrEqual((span?.least.value ?? Number.NaN) - 1e-12);
        expect(cpc).toBeLessThanOrEqual((span?.greatest.value ?? Number.NaN) + 1e-12);
      }
      expectClose(lineNeutral.at(-1), (lineNeutral[0] ?? 0) + 7 * (perMetre.line + perMetre.neutral));
      expectClose(lineCpc.at(-1), (lineCpc[0] ?? 0) + 7 * (perMetre.line + perMetre.cpc));
      // Line and neutral of one size: every point reads the quarter value.
      if (perMetre.line === perMetre.neutral) expectClose(lineNeutral[0], quarterLineNeutral(ends).value);
      expectClose(readingAt(ends.r1, ends.r2, 0.5)?.value, quarterLineCpc(ends).value);
    }
  });
});

it("a 5 m spur in 2.5/1.5 adds 14.82 and 19.51 mΩ for each metre", () => {
  // ElectriciansForums, 2394 revision: 7.41, 12.10 and 19.51 mΩ/m.
  const spur = spurAddition({ length: 5, line: 2.5, cpc: 1.5 });
  expect(spur?.lineNeutral.value).toBeCloseTo(0.0741, 9);
  expect(spur?.lineCpc.value).toBeCloseTo(0.09755, 9);
  expect(spurAddition({ length: 5, line: 2.5, cpc: 3 })).toBeUndefined();
});

async function expectSameInNgspice(one: Ring): Promise<void> {
  const { circuit, faults } = circuitOf(one);
  const readings = ringReadings(one);
  for (const [name, measurements] of Object.entries(measurementsOf(circuit))) {
    const values = [readings[name as keyof typeof readings]].flat();
    expect(values).toHaveLength(measurements.length);
    for (const [at, measurement] of measurements.entries()) {
      const { from, to } = portOf(measurement);
      expectClose(values[at], await measured(networkFor(circuit, measurement, faults, one.links), from, to));
    }
  }
}

function expectClose(value: number | undefined, expected: number): void {
  if (expected === Number.POSITIVE_INFINITY) expect(value).toBe(expected);
  else expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(1e-9 * expected);
}

function meter(...values: readonly number[]): string {
  return values.map((value) => (Number.isFinite(value) ? round(value, 2).toFixed(2) : "∞")).join(" ");
}

function renamed(which: number): (resistor: Resistor) => Resistor {
  return ({ from, to, ohms }) => ({ from: `${from} of ${which}`, to: `${to} of ${which}`, ohms });
}

/** Rings of 2 to 8 points in common cables, sound or with up to three spurs, joints, contacts, openings and swaps. */
function anyRing(): fc.Arbitrary<Ring> {
  const cable = fc.constantFrom(
    { line: 0.00741, neutral: 0.00741, cpc: 0.0121 },
    { line: 0.00741, neutral: 0.00741, cpc: 0.00741 },
    { line: 0.00461, neutral: 0.00461, cpc: 0.0121 },
    { line: 0.0121, neutral: 0.0121, cpc: 0.0121 },
  );
  const gaps = fc.array(fc.integer({ min: 1, max: 150 }), { minLength: 3, maxLength: 9 });
  return fc.tuple(cable, gaps).chain(([perMetre, lengths]) => {
    const places = lengths.map((_, index) => lengths.slice(0, index + 1).reduce((sum, gap) => sum + gap / 10, 0));
    const points = places.slice(0, -1);
    const faults = fc.array(anyFault(points.length), { maxLength: 3 });
    return faults.map((some) => ({ length: places.at(-1) ?? 0, perMetre, points, faults: some }));
  });
}

function anyFault(count: number): fc.Arbitrary<RingFault> {
  const point = fc.integer({ min: 0, max: count - 1 });
  const stretch = fc.integer({ min: 0, max: count });
  const conductor = fc.constantFrom("line", "neutral", "cpc");
  const ohms = fc.integer({ min: 1, max: 200 }).map((hundredths) => hundredths / 100);
  const length = fc.integer({ min: 1, max: 20 });
  const spur = fc.record({ kind: fc.constant("spur"), from: point, length });
  return fc.oneof(
    { weight: 3, arbitrary: spur },
    fc.record({ kind: fc.constant("joint"), conductor, stretch, ohms }),
    fc.record({ kind: fc.constant("contact"), conductor, point, ohms }),
    fc.record({ kind: fc.constant("open"), conductors: fc.tuple(conductor), stretch }),
    fc
      .record({ kind: fc.constant("bridge"), from: fc.constant(0), to: fc.constant(count - 1), length })
      .filter(() => count > 1),
  );
}
