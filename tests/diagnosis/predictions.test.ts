import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { networkFor, portOf } from "../../server/calc/circuit-readings.ts";
import { soundReading, standings } from "../../server/calc/sound-readings.ts";
import { hypothesesOf } from "../../server/diagnosis/hypotheses.ts";
import { Predictions } from "../../server/diagnosis/predictions.ts";
import { finished } from "../../server/memo/steps.ts";
import { startNgspice } from "../calc/ngspice.ts";
import { readingOf } from "../helpers/reading.ts";
import { anyCircuit, anyFaulty } from "./circuits.ts";
import { measurementsOf, sheetOf } from "./helpers.ts";

const measured = await startNgspice();

function expectClose(value: number, expected: number): void {
  if (expected === Number.POSITIVE_INFINITY) expect(value).toBe(expected);
  else expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-9 * expected);
}

describe("a circuit as a network", () => {
  const cases = fc.sample(anyFaulty(), { numRuns: 1200, seed: 7671 });

  it("reads as in ngspice, on more than a thousand rings and radials with spurs and faults", async () => {
    expect(cases.filter(({ circuit }) => circuit.closed).length).toBeGreaterThan(400);
    expect(cases.filter(({ circuit }) => !circuit.closed).length).toBeGreaterThan(200);
    expect(cases.filter(({ faults }) => faults.length > 0).length).toBeGreaterThan(800);
    for (const { circuit, faults, links, pick } of cases) {
      const all = measurementsOf(circuit);
      // Two readings of each, so that the number of circuits can be great.
      for (const at of [pick % all.length, (pick * 7 + 3) % all.length]) {
        const measurement = all[at]?.[1];
        if (!measurement) continue;
        const { from, to } = portOf(measurement);
        const there = await measured(networkFor(circuit, measurement, faults, links), from, to);
        expectClose(readingOf(circuit, measurement, faults, links), there);
      }
    }
  }, 240_000);
});

describe("a sound circuit by formula", () => {
  it("reads as the network does, however the legs are joined", () => {
    const links = fc.constantFrom("opposite", "same-leg", "one", "last", "none");
    fc.assert(
      fc.property(anyCircuit(), links, (circuit, how) => {
        const places = standings(circuit);
        const rounds = circuit.closed ? how : how === "none" ? "none" : "opposite";
        for (const [, measurement] of measurementsOf(circuit))
          expectClose(soundReading(circuit, places, measurement, rounds), readingOf(circuit, measurement, [], rounds));
      }),
      { numRuns: 150 },
    );
  });
});

describe("a change of the solved network", () => {
  it("reads as the network solved afresh, for every fault that is tried", () => {
    fc.assert(
      fc.property(anyCircuit(5), fc.double({ min: 0.05, max: 5, noNaN: true }), (circuit, size) => {
        const sheet = sheetOf(circuit);
        for (const { predict, state, links, kind } of finished(hypothesesOf(new Predictions(sheet)))) {
          if (/leads|exchanged|copied|decimal-point|undivided|halved/.test(kind)) continue;
          const { faults, perMetre = circuit.perMetre } = state(size);
          const predicted = predict(size);
          for (const [at, { measurement }] of sheet.readings.entries()) {
            const joined = measurement.kind === "round" ? links?.[measurement.other] : undefined;
            const afresh = readingOf({ ...circuit, perMetre }, measurement, faults, joined);
            // Cut branches leave nothing of a current but rounding; everything else is as close as it is solved.
            if (!Number.isFinite(afresh)) expect(predicted[at], `${kind} ${at}`).toBe(afresh);
            else expect(Math.abs((predicted[at] ?? 0) - afresh), `${kind} ${at}`).toBeLessThan(1e-8 * (1 + afresh));
          }
        }
      }),
      { numRuns: 25 },
    );
  });
});
