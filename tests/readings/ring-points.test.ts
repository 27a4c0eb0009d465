/**
 * A ring by its points and its ends. By hand: 2.5/1.5 mm² cable has 7.41 and 12.1 mΩ/m (BS EN 60228); ends of 0.40, 0.40 and
 * 0.66 Ω give 0.20 Ω line to neutral and up to 0.265 Ω line to cpc at every point, 0.249 Ω at the board. Readings may be
 * 0.05 Ω out (common practice), two of one meter 0.03 Ω.
 */
import { describe, expect, it } from "vitest";
import { studyRing } from "../../server/readings/ring.ts";
import { ringCpcRatio } from "../../server/readings/ring-ends.ts";
import { ringPattern } from "../../server/readings/ring-pattern.ts";
import { pointMismatch } from "../../server/readings/ring-points.ts";
import { equalsQuarter, highestPoint, r1r2Mismatch, recordedR1R2 } from "../../server/readings/ring-r1r2.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";
const ring = (readings: string, lines = twin, ends = "ends r1 0.40 Ω rn 0.40 Ω r2 0.66 Ω", kind = "ring") => {
  const text = inSetting(`way 1 ${kind} "Sockets" {\n${lines}\ndead 2026-03-04 {\n${ends}\n${readings}\n}\n}`).text;
  return wayOf(nodeOf(installationOf(text), "A"), "1");
};

describe("what is wrong at a point", () => {
  const at = (readings: string, lines?: string, ends?: string) => {
    const study = ring(`at S1 ${readings}`, lines, ends);
    const [point] = studyRing(study).points;
    const found = point && pointMismatch(study, point);
    return found && `${found.kind} ${found.rounds.join(" ")}`;
  };

  it.each([
    ["L-N 0.25 Ω L-E 0.31 Ω", undefined],
    ["L-N 0.26 Ω L-E 0.26 Ω", "high L-N"],
    ["L-N 0.15 Ω L-E 0.20 Ω", undefined],
    ["L-N 0.14 Ω L-E 0.20 Ω", "low L-N"],
    ["L-N 0.20 Ω L-E 0.32 Ω", "high L-E"],
    ["L-N 0.20 Ω L-E 0.19 Ω", "low L-E"],
    ["L-N >200 Ω L-E 0.26 Ω", "open L-N"],
    ["L-N >200 Ω L-E >200 Ω", "open L-N L-E"],
    // 0.10 Ω line to neutral would be 6.75 m of spur, which adds 0.13 Ω to earth: 0.105 is that, but for the meter.
    ["L-N 0.30 Ω L-E 0.37 Ω", "high L-N L-E"],
    // Alike in both rounds and no spur: what the line has in both, its contact.
    ["L-N 0.30 Ω L-E 0.36 Ω", "contact L-N L-E"],
    ["L-N 0.30 Ω L-E 0.33 Ω", "high L-N L-E"],
  ])("%s: %s", (readings, wanted) => expect(at(readings)).toBe(wanted));

  it.each([
    ["spurs 1", "spur-unknown L-N L-E"],
    ["spurs 0", "contact L-N L-E"],
    ["run A 14 m S1 14 m A", "contact L-N L-E"],
  ])("with %s: %s", (line, wanted) => expect(at("L-N 0.30 Ω L-E 0.36 Ω", `${twin}\n${line}`)).toBe(wanted));

  // On the ring itself, by its run: a contact only where both rounds are too high, and as much.
  it.each([
    ["L-N 0.30 Ω L-E 0.33 Ω", "high L-N L-E"],
    ["L-N 0.26 Ω L-E 0.26 Ω", "high L-N"],
    ["L-N 0.20 Ω L-E 0.32 Ω", "high L-E"],
  ])("of its run, %s: %s", (readings, wanted) => expect(at(readings, `${twin}\nrun A 14 m S1 14 m A`)).toBe(wanted));

  // A poor joint in one of them makes a quarter too high: less than it is nothing.
  it("is nothing below what uneven ends give", () => {
    const uneven = "ends r1 0.40 Ω rn 0.80 Ω r2 0.66 Ω";
    expect(at("L-N 0.20 Ω L-E 0.26 Ω", undefined, uneven)).toBeUndefined();
    expect(at("L-N 0.36 Ω L-E 0.26 Ω", undefined, uneven)).toBe("high L-N");
  });

  // 0.90 Ω is high for 0.40 Ω by the sizes (0.653 Ω), which makes the quarter to earth 0.325 Ω: too high, never too low.
  it.each([
    ["r1 0.40 Ω rn 0.40 Ω r2 0.90 Ω", "L-N 0.20 Ω L-E 0.25 Ω", undefined],
    ["r1 0.40 Ω rn 0.40 Ω r2 0.90 Ω", "L-N 0.20 Ω L-E 0.38 Ω", "high L-E"],
    ["r1 0.40 Ω rn 0.40 Ω r2 0.90 Ω", "L-N 0.14 Ω L-E 0.25 Ω", "low L-N"],
    ["r1 0.40 Ω rn 0.40 Ω r2 0.66 Ω", "L-N 0.20 Ω L-E 0.19 Ω", "low L-E"],
    // Ends of line and neutral that differ make both rounds unsure.
    ["r1 0.40 Ω rn 0.80 Ω r2 0.66 Ω", "L-N 0.20 Ω L-E 0.19 Ω", undefined],
    ["r1 0.40 Ω rn 0.45 Ω r2 0.66 Ω", "L-N 0.14 Ω L-E 0.26 Ω", "low L-N"],
    // Without a reading of the neutral there is nothing to differ from.
    ["r1 0.40 Ω rn N/A r2 0.66 Ω", "L-E 0.19 Ω", "low L-E"],
  ])("of ends of %s and a point of %s: %s", (ends, readings, wanted) => {
    expect(at(readings, undefined, `ends ${ends}`)).toBe(wanted);
  });
});

// Both links on one leg: from nothing at the board up to a quarter of 0.80 Ω half way round, and down again.
describe("links that are not crossed", () => {
  const pattern = (...values: readonly number[]) =>
    ringPattern(ring(values.map((value, at) => `at S${at + 1} L-N ${value.toFixed(2)} Ω`).join("\n")))?.kind;
  it.each([
    [[0.06, 0.15, 0.2, 0.15, 0.06], "links-not-crossed"],
    [[0.06, 0.15, 0.25, 0.15, 0.06], "links-not-crossed"],
    [[0.06, 0.15, 0.26, 0.15, 0.06], undefined],
    [[0.06, 0.2, 0.05, 0.15, 0.06], undefined],
    [[0.15, 0.06, 0.2, 0.15, 0.06], undefined],
    [[0.2, 0.2, 0.2], undefined],
    [[0.06, 0.2], undefined],
    [[0.06, 0.2, 0.19], undefined],
  ] as const)("%j: %s", (values, kind) => expect(pattern(...values)).toBe(kind));
});

describe("R1+R2 of a ring", () => {
  // (0.40 + 0.66) / 4 = 0.265 Ω half way round, 0.249 Ω at the board; 1.06 Ω undivided, 0.53 Ω halved, each within 5 %.
  const read = (value: number, points = "", lines?: string) => r1r2Mismatch(ring(points, lines), value);
  it.each([
    [0.19, "below"],
    [0.2, undefined],
    [0.31, undefined],
    [0.32, "above"],
    [0.5, "above"],
    [0.51, "halved"],
    [0.55, "halved"],
    [0.56, "above"],
    [0.63, "above"],
    [0.64, "undivided"],
    [1.06, "undivided"],
    [3, "undivided"],
  ])("of %f Ω without points: %s", (value, wanted) => expect(read(value)).toBe(wanted));

  it.each([
    ["spurs 1", undefined],
    ["spurs 0", "above"],
    ["run A 14 m S1 14 m A\nrun S1 2 m S2", undefined],
    ["run A 14 m S1 14 m A", "above"],
  ])("of 0.32 Ω with %s: %s", (line, wanted) => expect(read(0.32, "", `${twin}\n${line}`)).toBe(wanted));

  // It is the highest of the points, as far as all were read.
  it.each([
    [0.33, "", undefined],
    [0.34, "", undefined],
    [0.34, "points 2", "above"],
    [0.34, "points 3", undefined],
    [0.34, "run A 14 m S1 7 m S2 7 m A", "above"],
    [0.34, "run A 14 m S1 7 m S2 4 m S3 3 m A", undefined],
    [0.23, "", undefined],
    [0.22, "", "below"],
    [1.06, "", "undivided"],
    [0.53, "", "halved"],
  ])("of %f Ω where points read 0.28 and 0.27 Ω, with “%s”: %s", (value, line, wanted) => {
    const points = "at S1 L-N 0.20 Ω L-E 0.28 Ω\nat S2 L-N 0.20 Ω L-E 0.27 Ω";
    expect(read(value, points, `${twin}\n${line}`)).toBe(wanted);
    expect(highestPoint(ring(points))?.value).toBe(0.28);
  });

  it.each([
    ["R1+R2 0.27 Ω", true],
    ["R1+R2 0.26 Ω", false],
    ["R1+R2 0.265 Ω", true],
    ["R1+R2 0.27 Ω calculated", false],
    ["R1+R2 0.27 Ω\nat S1 L-E 0.27 Ω", false],
  ])("%s is the quarter, written as a reading: %s", (lines, wanted) => {
    expect(equalsQuarter(ring(lines)) !== undefined).toBe(wanted);
  });

  it("is a figure only where it was on the scale", () => {
    expect(recordedR1R2(ring("R1+R2 0.27 Ω"))?.quantity.value).toBe(0.27);
    expect(recordedR1R2(ring("R1+R2 <0.27 Ω"))).toBeUndefined();
    expect(recordedR1R2(ring("R1+R2 >2 Ω"))).toBeUndefined();
  });
});

// 0.40 Ω × 12.1 / 7.41 is 0.653 Ω, and 15 % of it 0.098 Ω. Of 0.10 Ω the meters decide: 0.03 Ω × (1 + 1.63) is 0.079 Ω.
describe("r2 by the sizes", () => {
  const verdict = (ends: string, cable = twin) => ringCpcRatio(ring("", cable, `ends ${ends}`))?.verdict;
  it.each([
    ["r1 0.40 Ω rn 0.40 Ω r2 0.75 Ω", undefined],
    ["r1 0.40 Ω rn 0.40 Ω r2 0.76 Ω", "high"],
    ["r1 0.40 Ω rn 0.40 Ω r2 0.56 Ω", undefined],
    ["r1 0.40 Ω rn 0.40 Ω r2 0.55 Ω", "low"],
    ["r1 0.10 Ω rn 0.10 Ω r2 0.24 Ω", undefined],
    ["r1 0.10 Ω rn 0.10 Ω r2 0.25 Ω", "high"],
    ["r1 0.10 Ω rn 0.10 Ω r2 0.09 Ω", undefined],
    ["r1 0.10 Ω rn 0.10 Ω r2 0.08 Ω", "low"],
    // The sounder of line and neutral is what it is compared with.
    ["r1 0.60 Ω rn 0.40 Ω r2 0.76 Ω", "high"],
    ["r1 0.40 Ω rn 0.60 Ω r2 0.76 Ω", "high"],
    ["r1 0.60 Ω rn 0.40 Ω r2 0.75 Ω", undefined],
  ])("%s: %s", (ends, wanted) => expect(verdict(ends)).toBe(wanted));

  it("is not asked where armour or nothing known is the protective conductor", () => {
    const ends = "r1 0.40 Ω rn 0.40 Ω r2 0.90 Ω";
    expect(verdict(ends)).toBe("high");
    expect(verdict(ends, "cable armoured 70 °C line 2.5 mm² cpc 1.5 mm² cpc-by armour cores 3")).toBeUndefined();
    expect(verdict(ends, "cable flat-twin line 2.5 mm²")).toBeUndefined();
  });
});
