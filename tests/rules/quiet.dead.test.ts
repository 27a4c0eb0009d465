import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { resistancePerMetre } from "../../server/calc/conductor-resistance.ts";
import { deadFindings } from "../helpers/dead-tests.ts";
import { type Ring, type RingFault, ringReadings } from "../helpers/ring.ts";

/**
 * Sound circuits raise nothing, whatever their sizes, lengths, spurs and temperature, and however the meter rounds. The
 * readings come from a network of resistors, not from the formulas the checks use.
 */

const sizes = [
  { line: 2.5, cpc: 1.5 },
  { line: 2.5, cpc: 2.5 },
  { line: 4, cpc: 1.5 },
  { line: 1.5, cpc: 1 },
] as const;

/** Copper against 20 °C. */
const warmth = (celsius: number) => 1 + 0.00393 * (celsius - 20);
const perMetre = (csa: number, celsius: number) => (resistancePerMetre(csa)?.value ?? Number.NaN) * warmth(celsius);

/** Two digits either way, and hundredths: a meter of the usual class. */
const meter = (value: number, noise: number) => `${Math.max(0.01, Math.round(value * 100 + noise) / 100).toFixed(2)} Ω`;
const noises = (least: number) => fc.array(fc.integer({ min: -2, max: 2 }), { minLength: least, maxLength: least });

const ringCase = fc.record({
  size: fc.constantFrom(...sizes),
  legs: fc.array(fc.integer({ min: 2, max: 16 }), { minLength: 3, maxLength: 8 }),
  spurs: fc.array(fc.record({ at: fc.nat(), length: fc.integer({ min: 1, max: 4 }) }), { maxLength: 2 }),
  celsius: fc.integer({ min: 5, max: 30 }),
  temperatureNoted: fc.boolean(),
  drawn: fc.boolean(),
  spursStated: fc.boolean(),
  noise: noises(60),
});

interface RingCase {
  readonly size: (typeof sizes)[number];
  readonly legs: readonly number[];
  readonly spurs: readonly { readonly at: number; readonly length: number }[];
  readonly celsius: number;
  readonly temperatureNoted: boolean;
  readonly drawn: boolean;
  readonly noise: readonly number[];
}

function ringLines({ size, legs, spurs, celsius, temperatureNoted, drawn, noise }: RingCase): string {
  const points = legs.length - 1;
  const stops = legs.map((_, index) => legs.slice(0, index + 1).reduce((sum, leg) => sum + leg, 0));
  // No more spurs than points, each from a point of its own, and of unknown length only where nothing is drawn.
  const placed = (drawn ? spurs : [])
    .slice(0, points)
    .map(({ at, length }, index) => ({ from: (at + index) % points, length }));
  const distinct = placed.filter(({ from }, index) => placed.findIndex((other) => other.from === from) === index);
  const ring: Ring = {
    length: stops.at(-1) ?? 0,
    perMetre: {
      line: perMetre(size.line, celsius),
      neutral: perMetre(size.line, celsius),
      cpc: perMetre(size.cpc, celsius),
    },
    points: stops.slice(0, -1),
    faults: distinct.map((spur): RingFault => ({ kind: "spur", ...spur })),
  };
  const { r1, rn, r2, lineNeutral, lineCpc } = ringReadings(ring);
  let next = 0;
  const read = (value: number) => meter(value, noise[next++ % noise.length] ?? 0);
  const E = lineCpc.map(read);
  const names = [
    ...stops.slice(0, -1).map((_, index) => `S${index + 1}`),
    ...distinct.map((_, index) => `X${index + 1}`),
  ];
  const highest = [...E].sort((a, b) => Number.parseFloat(b) - Number.parseFloat(a))[0];
  return [
    'way 1 ring "Sockets" {',
    `cable flat-twin line ${size.line} mm² cpc ${size.cpc} mm²`,
    ...(drawn
      ? [
          `run A ${legs.map((leg, index) => `${leg} m ${index < points ? `S${index + 1}` : "A"}`).join(" ")}`,
          ...distinct.map(({ from, length }, index) => `run S${from + 1} ${length} m X${index + 1}`),
        ]
      : [`length ${ring.length} m`]),
    "serves sockets",
    "dead 2026-03-04 {",
    ...(temperatureNoted ? [`temperature ${celsius} °C`] : []),
    `ends r1 ${read(r1)} rn ${read(rn)} r2 ${read(r2)}`,
    ...names.map((name, index) => `at ${name} L-N ${read(lineNeutral[index] ?? 0)} L-E ${E[index]} polarity ok`),
    `R1+R2 ${highest}`,
    "insulation 500 V L-N 310 MΩ L-E >999 MΩ N-E 640 MΩ",
    "}",
    "}",
  ].join("\n");
}

describe("sound circuits raise nothing", () => {
  it("rings", () => {
    fc.assert(
      fc.property(ringCase, (given) => {
        expect(deadFindings(ringLines(given), { stage: "dead-tested" })).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  it("radials and feeders", () => {
    const radialCase = fc.record({
      kind: fc.constantFrom("radial", "feeder"),
      size: fc.constantFrom(...sizes, { line: 6, cpc: 2.5 }, { line: 10, cpc: 4 }, { line: 16, cpc: 16 }),
      length: fc.integer({ min: 3, max: 70 }),
      celsius: fc.integer({ min: 5, max: 30 }),
      temperatureNoted: fc.boolean(),
      alone: fc.boolean(),
      noise: fc.integer({ min: -2, max: 2 }),
      insulation: fc.constantFrom(
        "500 V L-N 310 MΩ L-E >999 MΩ N-E >999 MΩ",
        "500 V L-E 84 MΩ joined",
        '250 V L-N 210 MΩ L-E 190 MΩ N-E 205 MΩ "Fixed drivers left connected"',
        '500 V LIM "Shop open, agreed with the client"',
      ),
    });
    fc.assert(
      fc.property(radialCase, ({ kind, size, length, celsius, temperatureNoted, alone, noise, insulation }) => {
        const R2 = length * perMetre(size.cpc, celsius);
        const R1R2 = R2 + length * perMetre(size.line, celsius);
        const lines = [
          `way 1 ${kind} "Circuit" {`,
          `cable singles line ${size.line} mm² cpc ${size.cpc} mm²`,
          `length ${length} m`,
          "dead 2026-03-04 {",
          ...(temperatureNoted ? [`temperature ${celsius} °C`] : []),
          alone ? `R2 ${meter(R2, noise)}` : `R1+R2 ${meter(R1R2, noise)}`,
          `insulation ${insulation}`,
          "polarity ok",
          "}",
          "}",
        ].join("\n");
        expect(deadFindings(lines, { stage: "dead-tested" })).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  it("boards whose circuits were tested together", () => {
    const readings = fc.array(fc.integer({ min: 120, max: 900 }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(readings, fc.integer({ min: 92, max: 108 }), (megohms, uncertainty) => {
        const total = 1 / megohms.reduce((sum, value) => sum + 1 / value, 0);
        const board = `fed-from supply\ndead 2026-03-04 {\ninsulation 500 V L-E ${((total * uncertainty) / 100).toFixed(1)} MΩ joined\n}`;
        const ways = megohms.map((value, index) =>
          [
            `way ${index + 1} radial "Circuit" {`,
            "dead 2026-03-04 {",
            "R1+R2 0.41 Ω",
            `insulation 500 V L-N 310 MΩ L-E ${value} MΩ N-E >999 MΩ`,
            "polarity ok",
            "}",
            "}",
          ].join("\n"),
        );
        expect(deadFindings(ways.join("\n"), { stage: "dead-tested", board })).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  it.each([
    ["a spare way", "way 1 spare"],
    ["a circuit that is only designed", 'way 1 radial "Lights" {\nserves lighting\n}'],
  ])("%s", (_, lines) => {
    expect(deadFindings(lines, { stage: lines.includes("spare") ? "tested" : "design" })).toEqual([]);
  });
});
