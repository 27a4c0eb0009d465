import { describe, expect, it } from "vitest";
import { deadFindings } from "../helpers/dead-tests.ts";
import { find } from "../helpers/find.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const said = (lines: string) => deadFindings(lines, { stage: "installed" }, ["diagnosis"]);

const ring = (body: string, tests: string) => `way 1 ring "Sockets" {
  cable flat-twin line 2.5 mm² cpc 1.5 mm²
  ${body}
  dead 2026-03-04 {
    ${tests}
  }
}`;

const run = "run A 5 m S1 10 m S2 10 m S3 10 m S4 10 m S5 10 m S6 5 m A";
const round = (neutral: string, earth: string) => {
  const [N, E] = [neutral.split(" "), earth.split(" ")];
  return N.map((value, at) => `at S${at + 1} L-N ${value} Ω L-E ${E[at]} Ω`).join("\n    ");
};
const soundN = "0.22 0.22 0.22 0.22 0.22 0.22";
const soundE = "0.28 0.29 0.29 0.29 0.29 0.28";

describe("readings that disagree", () => {
  it("an explanation too unlikely to be listed is not spoken of as the second", () => {
    const wiring = `way 1 ring "Sockets" {
  cable singles 70 °C line 2.5 mm² cpc 2.5 mm²
  run A 7 m S1 6 m S2 9 m S3 8 m S4 12 m A
  run S3 4 m S5
  dead 2026-03-04 {
    ends   r1 0.31 Ω rn 0.31 Ω r2 0.31 Ω
    at S1  L-N 0.16 Ω  L-E 0.16 Ω
    at S3  L-N 0.16 Ω  L-E 0.36 Ω
    at S5  L-N 0.22 Ω  L-E 0.22 Ω
  }
}`;
    const [finding] = find("diagnosis/readings-disagree", inSetting(wiring, { stage: "installed" }).text);
    const [explanation, next, ...more] = finding?.related.map(({ message }) => message) ?? [];
    expect(explanation).toMatch(/^1\. /);
    expect(next).toMatch(/^Next test, isolated and proved dead: .* supports it, about 0\.\d+ Ω rules it out\.$/);
    expect(more).toEqual([]);
  });

  it("a sound ring raises nothing, drawn or not", () => {
    const tests = `ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\n    ${round(soundN, soundE)}`;
    for (const body of [run, "length 60 m", "points 6"]) expect(said(ring(body, tests))).toEqual([]);
  });

  it("an open line is placed, and the test that shows it is named", () => {
    const tests = `ends r1 >99 Ω rn 0.44 Ω r2 0.73 Ω\n    ${round(
      "0.44 0.44 0.44 0.44 0.44 0.44",
      "0.70 0.66 0.61 0.61 0.66 0.70",
    )}`;
    const [finding, ...more] = said(ring(run, tests));
    expect(more).toEqual([]);
    expect(finding?.severity).toBe("error");
    expect(finding?.line).toBe(5);
    expect(finding?.message).toMatch(/Likeliest: the line is open between S3 and S4\./);
  });

  it.each([
    ["1.60 Ω", /R1\+R2 is about 5\.9 times what the length gives/],
    ["0.70 Ω", /not nulled: R1\+R2 has about/],
  ])("one figure of %s is named, and is not every reading", (R1R2, says) => {
    const wiring = `way 1 radial "Heater" {
  cable flat-twin line 2.5 mm² cpc 1.5 mm²
  length 14 m
  dead 2026-03-04 {
    R1+R2 ${R1R2}
  }
}`;
    const [finding] = find("diagnosis/readings-disagree", inSetting(wiring, { stage: "installed" }).text);
    const told = finding?.related.map(({ message }) => message).join("\n") ?? "";
    expect(told).toMatch(says);
    expect(told).not.toMatch(/every reading/i);
  });

  it("a joint in the protective conductor is placed by readings of it alone", () => {
    const columns = `way 1 radial "Columns" {
  cable armoured 90 °C line 6 mm² cpc 6 mm² cores 3
  run A 40 m C1 25 m C2 25 m C3 25 m C4
  dead 2026-03-04 {
    at C1 R2 0.13 Ω
    at C2 R2 0.21 Ω
    at C3 R2 0.62 Ω
    at C4 R2 0.70 Ω
  }
}`;
    const [finding, ...more] = said(columns);
    expect(more).toEqual([]);
    expect(finding?.message).toMatch(/joint of about 0\.3\d? Ω lies in the protective conductor between C2 and C3\./);
  });

  it("R1+R2 of a ring is the sum of its ends undivided, and no cable that nobody drew", () => {
    const [finding, ...more] = said(ring("length 60 m", "ends r1 0.44 Ω rn 0.45 Ω r2 0.73 Ω\n    R1+R2 1.17 Ω"));
    expect(more).toEqual([]);
    expect(finding?.message).toContain("Likeliest: R1+R2 is r1 + r2, end to end");
  });

  it("half the sum of the ends is what one link gives as well", () => {
    const wiring = ring("length 60 m", "ends r1 0.44 Ω rn 0.45 Ω r2 0.73 Ω\n    R1+R2 0.58 Ω");
    const [finding] = find("diagnosis/readings-disagree", inSetting(wiring, { stage: "installed" }).text);
    const told = finding?.related.map(({ message }) => message).join("\n") ?? "";
    expect(told).toContain("Only one of the two links was made");
    expect(told).toContain("R1+R2 is half of r1 + r2");
  });

  it("an open neutral is found beside an R1+R2 that was not divided", () => {
    const [finding] = said(ring("length 60 m", "ends r1 0.44 Ω rn >99 Ω r2 0.73 Ω\n    R1+R2 1.17 Ω"));
    expect(finding?.severity).toBe("error");
    expect(finding?.message).toMatch(/Likeliest: the neutral is open .* R1\+R2 is r1 \+ r2, end to end/);
  });

  it("without runs the points are taken as evenly spaced, and that is said", () => {
    const tests = `ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\n    ${round("0.22 0.22 0.22 0.52 0.22 0.22", "0.28 0.29 0.29 0.59 0.29 0.28")}`;
    expect(said(ring("length 60 m", tests))[0]?.message).toMatch(/contact of about 0\.\d+ Ω at S4.*evenly spaced/);
  });

  it("a point that may be one of the spurs written is no riddle", () => {
    const tests = `ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\n    ${round("0.22 0.22 0.22 0.30 0.22 0.22", "0.28 0.29 0.29 0.39 0.29 0.28")}`;
    expect(said(ring("points 6\n  spurs 1", tests))).toEqual([]);
  });

  it("figures that were worked out, not measured, are no readings", () => {
    const tests = "R1+R2 3.90 Ω calculated";
    const way = (line: string) => `way 2 radial "Heater" {
  cable flat-twin line 2.5 mm² cpc 1.5 mm²
  length 20 m
  dead 2026-03-04 {
    ${line}
  }
}`;
    expect(said(way(tests))).toEqual([]);
    expect(said(way("R1+R2 3.90 Ω"))[0]?.message).toMatch(/R1\+R2 is written 10 times too high/);
  });

  it("metalwork that is noted explains a low protective conductor by itself", () => {
    const way = (note: string) => `way 2 radial "Motor" {
  cable flat-twin line 2.5 mm² cpc 1.5 mm²
  length 40 m
  ${note}
  dead 2026-03-04 {
    R1+R2 0.31 Ω
  }
}`;
    expect(said(way('parallel-path "Frame bolted to bonded steel"'))).toEqual([]);
    expect(said(way(""))).toHaveLength(1);
  });

  it("half-written lines raise nothing", () => {
    const untested = ["record/stage-behind", "record/no-device", "record/serves-not-stated"];
    for (const [tests, fault] of [
      ["ends r1 0.44 Ω rn", "language/missing-argument"],
      ["ends r1 0.9", "language/missing-unit"],
      ["at S1 L-N", "language/missing-argument"],
      ["R1+R2", "language/missing-argument"],
      ["at S1 L-N 0.22 Ω L-E 9", "language/missing-unit"],
    ] as const) {
      const found = findingsOf(inSetting(ring(run, tests), { stage: "installed" }).text);
      expect(found.map(({ check }) => check)).toEqual([...untested, fault]);
    }
  });
});
