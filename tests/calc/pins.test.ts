/** Two pins of a point, two conductors joined at the board: what a meter shows is what lies between these two. */
import { describe, expect, it } from "vitest";
import { type CircuitRuns, type Conductor, legStart } from "../../server/calc/circuit-network.ts";
import { readingOf } from "../helpers/reading.ts";

/** 20 m of 2.5/1.5 mm² cable to a point: 7.41 and 12.1 mΩ/m, 0.1482 and 0.242 Ω. */
const radial: CircuitRuns = {
  closed: false,
  legs: [{ from: legStart, to: "P", length: 20, main: true }],
  places: ["P"],
  perMetre: { line: 0.00741, neutral: 0.00741, cpc: 0.0121 },
};
const between = (pair: readonly [Conductor, Conductor], joined: "neutral" | "cpc") =>
  readingOf(radial, { kind: "pins", pair, joined, place: "P" }, [], "last");

describe("two pins of a point", () => {
  it.each([
    [["line", "cpc"], "cpc", 0.3902],
    [["cpc", "line"], "cpc", 0.3902],
    [["line", "neutral"], "neutral", 0.2964],
  ] as const)("%j, line and %s joined at the board: %f Ω", (pair, joined, ohms) => {
    expect(between(pair, joined)).toBeCloseTo(ohms, 9);
  });
  it.each([
    [["neutral", "cpc"], "cpc"],
    [["line", "neutral"], "cpc"],
    [["line", "cpc"], "neutral"],
  ] as const)("%j, of which one is joined to nothing (line and %s are): no path", (pair, joined) => {
    expect(between(pair, joined)).toBe(Number.POSITIVE_INFINITY);
  });
});
