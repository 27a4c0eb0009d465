/** What stands on a line that was not understood is not asked for once more. */
import { describe, expect, it } from "vitest";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const found = (lines: string, setting = {}): string[] =>
  findingsOf(inSetting(lines, { stage: "tested", ...setting }).text).map(({ check }) => check);

describe("facts that share a line", () => {
  const tests = (line: string) => `way 1 radial "Bench" {\ndead 2026-03-04 {\n${line}\n}\n}`;
  const missing = (line: string) =>
    found(tests(line)).filter((check) => /^(insulation|polarity)\/missing$/.test(check));

  it("are there, though the line is wrong", () => {
    const crowded = "R1+R2 0.18 Ω insulation 500 V L-N 200 MΩ L-E 200 MΩ N-E 200 MΩ polarity wrong";
    expect(found(tests(crowded))).toContain("language/crowded");
    expect(missing(crowded)).toEqual([]);
  });

  it("that are not there are missed", () => {
    expect(missing("R1+R2 0.18 Ω")).toEqual(["insulation/missing", "polarity/missing"]);
    expect(missing("R1+R2 0.18 Ω polarity wron")).toEqual(["insulation/missing", "polarity/missing"]);
  });

  it("are those of an instrument too", () => {
    const before = 'instrument M1 "Tester" {\nserial "7" due 2027-01-01\n}';
    const way = 'way 1 radial "Bench" {\nlive 2026-03-05 with M1 {\nZs 0.6 Ω\n}\n}';
    expect(found(way, { before })).not.toContain("instrument/no-due");
    expect(found(way, { before: 'instrument M1 "Tester" {\nserial "7"\n}' })).toContain("instrument/no-due");
  });
});

it("a trunking whose size was not understood may be the one that is named", () => {
  const way = 'way 1 radial "Bench" {\nroute trunking method B in C1\n}';
  const board = (line: string) => ({ board: `fed-from supply\n${line}` });
  expect(found(way, board("containment C1 trunking 50x50"))).not.toContain("language/unknown-name");
  expect(found(way, board("containment C2 trunking 50 mm by 50 mm"))).toContain("language/unknown-name");
});

it("a term of the site stands for its word, though it is a part of another line", () => {
  const supply = (line: string) => ({ supply: `earthing TN-S\nZe 0.30 Ω\n${line}` });
  const check = "protective/earthing-not-stated";
  expect(found("way 1 spare", supply("earth 6 mm²"))).not.toContain(check);
  expect(found("way 1 spare", supply("tails 16 mm²"))).toContain(check);
});

it("ends of a ring without their word may be the ones that are read", () => {
  const way = (ends: string) => `way 1 ring "Sockets" {\nserves sockets\ndead 2026-03-04 {\n${ends}\n}\n}`;
  expect(found(way("r1 0.4 Ω rn 0.41 Ω r2 0.66 Ω"))).not.toContain("ring/ends-missing");
  expect(found(way("R1+R2 0.27 Ω"))).toContain("ring/ends-missing");
});
