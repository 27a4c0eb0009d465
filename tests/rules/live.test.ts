import { describe, expect, it } from "vitest";
import { find, fixed } from "../helpers/find.ts";

const tested = { stage: "tested" } as const;
const way = (lines: string): string => `way 1 radial "Water heater" {\n  device BS EN 60898 B16 6 kA\n${lines}\n}`;

describe("loop impedance that is missing", () => {
  it("may be the sum of what was measured, marked as calculated", () => {
    const lines = way("  dead 2026-03-04 {\n    R1+R2 0.41 Ω\n  }\n  live 2026-03-05 {\n    polarity ok\n  }");
    const [finding] = find("live/zs-missing", lines, tested);
    expect(finding && fixed(finding)).toContain("live 2026-03-05 {\n    Zs calculated 0.71 Ω\n    polarity ok");
  });

  it("is not calculated from a figure that was itself calculated", () => {
    const lines = way(
      "  dead 2026-03-04 {\n    R1+R2 calculated 0.41 Ω\n  }\n  live 2026-03-05 {\n    polarity ok\n  }",
    );
    expect(find("live/zs-missing", lines, tested)[0]?.fixes).toEqual([]);
  });

  it.each(["at S1 Zs 0.6 Ω", 'Zs LIM "in use"', "Zs calculated 0.6 Ω", "Zs >2000 Ω"])("is there: %s", (reading) => {
    expect(find("live/zs-missing", way(`  live 2026-03-05 {\n    ${reading}\n  }`), tested)).toEqual([]);
  });

  it("one word is enough for a way without any live test, and none for a design", () => {
    expect(find("live/zs-missing", way(""), tested)).toEqual([]);
    expect(find("live/not-tested", way(""), tested)).toHaveLength(1);
    expect(find("live/not-tested", way(""), { stage: "dead-tested" })).toEqual([]);
    expect(find("live/not-tested", "way 9 spare", tested)).toEqual([]);
  });
});

describe("voltage", () => {
  const at = (voltage: string, lines = "", supply = "earthing TN-S\nZe 0.3 Ω") =>
    find("live/voltage-outside", way(`  ${lines}\n  live 2026-03-05 {\n    voltage ${voltage}\n  }`), {
      ...tested,
      supply,
    });

  it.each([
    ["216.2 V", 0],
    ["216.1 V", 1],
    ["253 V", 0],
    ["253.1 V", 1],
    ["404 V", 1],
  ])("%s", (voltage, count) => {
    expect(at(voltage)).toHaveLength(count);
  });

  it("between the lines of a three-phase circuit", () => {
    expect(at("404 V", "phase three")).toEqual([]);
    expect(at("450 V", "phase three")).toHaveLength(1);
  });

  it("of SELV is its own", () => expect(at("24 V", "serves selv")).toEqual([]));
});

describe("phase sequence", () => {
  it("is not asked of a board on one line, nor of one that stated it in its tests", () => {
    const setting = { ...tested, supply: "earthing TN-S\nphases three\nZe 0.3 Ω" };
    expect(find("live/phase-sequence-missing", "way 1 spare", setting)).toHaveLength(1);
    const single = { ...setting, board: "fed-from supply\nphases single" };
    expect(find("live/phase-sequence-missing", "way 1 spare", single)).toEqual([]);
    const stated = { ...setting, board: "fed-from supply\nlive 2026-03-05 {\nphase-sequence ok\n}" };
    expect(find("live/phase-sequence-missing", "way 1 spare", stated)).toEqual([]);
  });

  it("that was put right is not held against the board", () => {
    const board =
      "fed-from supply\nlive 2026-03-05 {\nphase-sequence reversed\n}\nlive 2026-03-06 {\nphase-sequence ok\n}";
    expect(find("live/phase-sequence-reversed", "way 1 spare", { ...tested, board })).toEqual([]);
  });
});

describe("the order of days", () => {
  const days = (dead: string, live: string) =>
    way(`  dead ${dead} {\n    R1+R2 0.31 Ω\n  }\n  live ${live} {\n    Zs 0.62 Ω\n  }`);

  it("the first live test is held against the first dead one, on new work", () => {
    expect(find("live/before-dead", days("2026-03-05", "2026-03-05"), tested)).toEqual([]);
    expect(find("live/before-dead", days("2026-03-05", "2026-03-04"), tested)).toHaveLength(1);
    expect(find("live/before-dead", days("2026-03-05", "2026-03-04"), { ...tested, work: "existing" })).toEqual([]);
  });

  it("a dead retest after the live tests is in order", () => {
    const lines = `${days("2026-03-04", "2026-03-05").slice(0, -2)}\n  dead 2026-03-09 {\n    R1+R2 0.31 Ω\n  }\n}`;
    expect(find("live/before-dead", lines, tested)).toEqual([]);
  });

  it("a dead test while the work goes on is good practice, a live one is not", () => {
    const board = 'fed-from supply\ninstalled by "D.O." 2026-03-05';
    expect(find("live/before-installation", days("2026-03-02", "2026-03-05"), { ...tested, board })).toEqual([]);
    expect(find("live/before-installation", days("2026-03-02", "2026-03-04"), { ...tested, board })).toHaveLength(1);
  });
});
