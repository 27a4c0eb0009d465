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
  });

  it("may be on a line of R1+R2 that is wrong in another place", () => {
    expect(missing("R1+R2 0.18 polarity ok")).toEqual(["insulation/missing"]);
    expect(missing("R1+R2 0.18 Ω polarity wron")).toEqual(["insulation/missing"]);
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

describe("a test of an RCD that was not understood may be the one that is missed", () => {
  const board = "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A\nrcd west BS EN 61008 63 A 30 mA type A";
  const of = (test: string, device = "device BS EN 60898 B16 6 kA\nbehind east") =>
    found(`way 1 radial "Bench" {\n${device}\nlive 2026-03-05 {\nZs 0.6 Ω\n${test}\n}\n}`, { board }).filter((check) =>
      /^rcd\/test(-button)?-missing$/.test(check),
    );
  const rcbo = "device BS EN 61009 B16 6 kA 30 mA type A";

  it.each([
    ["of the board", undefined],
    ["of the way", rcbo],
  ])("%s", (_, device) => {
    expect(of("rcd 30 mA 1x 24\ntest-button ok", device)).not.toContain("rcd/test-missing");
    expect(of("rcd nort 30 mA 1x 24 ms\ntest-button ok", device)).not.toContain("rcd/test-missing");
    expect(of("rcd east 30 mA 1x 24 ms\ntest-button pass", device)).not.toContain("rcd/test-button-missing");
    expect(of("rcd east 30 mA 1x 24 test-button ok", device)).not.toContain("rcd/test-button-missing");
    expect(of("", device)).toEqual(expect.arrayContaining(["rcd/test-missing", "rcd/test-button-missing"]));
  });

  it("and one on a way whose device was not understood is compared with no other RCD", () => {
    const before = { board: "fed-from supply\nmain-switch BS EN 61008 100 A 100 mA type A delayed" };
    const way = (device: string) =>
      found(`way 1 radial "Bench" {\n${device}\nlive 2026-03-05 {\nrcd 30 mA 1x 24 ms\n}\n}`, before);
    const compared = ["rcd/test-sensitivity", "rcd/time-delayed-too-fast"];
    expect(way("device BS EN 61009 B16 6 kA 30 mA type").filter((check) => compared.includes(check))).toEqual([]);
    expect(way("device BS EN 60898 B16 6 kA")).toEqual(expect.arrayContaining(compared));
  });
});

it("a device that was not understood may be small enough for the RCD before it", () => {
  const board = { supply: "cutout BS 88-3 100 A", board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" };
  const way = (device: string) => found(`way 1 radial "Bench" {\n${device}\nbehind east\n}`, board);
  expect(way("device BS EN 60898 B16 6000")).not.toContain("coordination/rcd-below-device");
  expect(way("device BS EN 60898 B80 6 kA")).toContain("coordination/rcd-below-device");
});
