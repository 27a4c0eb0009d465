import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";
import { board, type Circuit, supply, tested, way } from "../helpers/tested-circuit.ts";

/** What a tester saw in records of readings, each named after it. Everything the engine says of the sample counts. */

const threeLines: Setting = {
  ...tested,
  board: `${board.replace("0.9 kA", "1.55 kA")}\nphases three\nphase-sequence ok`,
  supply: `${supply.replace("0.95 kA", "1.6 kA")}\nphases three\nphase-sequence ok`,
};

const found = (circuit: Circuit, setting: Setting = tested) => findingsOf(inSetting(way(circuit), setting).text);
const ids = (circuit: Circuit, setting: Setting = tested): string[] =>
  found(circuit, setting)
    .filter(({ check }) => !check.startsWith("diagnosis/"))
    .map(({ check, severity }) => `${severity} ${check}`);
const says = (circuit: Circuit, check: string, setting: Setting = tested): string | undefined =>
  found(circuit, setting).find((finding) => finding.check === check)?.message;

const motor: Circuit = {
  device: "BS EN 60898 C16 6 kA",
  cable: "multicore 70 °C line 2.5 mm² cpc 2.5 mm²",
  more: "phase three\nserves motor\nIb 10 A",
  R1R2: "0.30 Ω",
  insulation: "500 V L-L >999 MΩ L-E 500 MΩ",
  Zs: "0.61 Ω",
  live: "phase-sequence ok",
};

it("the sound circuits of these samples are silent", () => {
  expect(ids({})).toEqual([]);
  expect(ids(motor, threeLines)).toEqual([]);
});

describe("polarity that was found wrong", () => {
  const wrong = "polarity wrong";
  const without = board.replace("polarity ok\n", "");

  it.each([
    ["at the origin", { supply: supply.replace("polarity ok", wrong) }],
    [
      "at the origin, in a test",
      { supply: `${supply.replace("polarity ok\n", "")}\nlive 2026-03-05 with M1 {\n${wrong}\n}` },
    ],
    ["at board A", { board: board.replace("polarity ok", wrong) }],
    ["at board A", { board: `${without}\ndead 2026-03-04 with M1 {\n${wrong}\n}` }],
    ["at board A", { board: `${without}\nlive 2026-03-05 with M1 {\n${wrong}\n}` }],
  ])("%s is an error", (where, setting) => {
    const all = { ...tested, ...setting };
    expect(ids({}, all)).toEqual(["error polarity/wrong-upstream"]);
    expect(says({}, "polarity/wrong-upstream", all)).toContain(where.includes("board") ? "board A" : "origin");
  });

  it("at a board and put right in a later test is history", () => {
    const later = `${board.replace("polarity ok", wrong)}\nlive 2026-03-05 with M1 {\npolarity ok\n}`;
    expect(ids({}, { ...tested, board: later })).toEqual([]);
  });
});

describe("insulation of three lines", () => {
  it.each([
    ["one pair of lines left out", "L1-L2 700 MΩ L2-L3 800 MΩ L1-E 500 MΩ L2-E 400 MΩ L3-E 450 MΩ", "L1-L3 is"],
    ["one line to earth for all", "L-L 700 MΩ L1-E 500 MΩ", "L2-E and L3-E are"],
    ["one line to neutral for all", "L-L 700 MΩ L1-N 500 MΩ L-E 300 MΩ N-E 400 MΩ", "L2-N and L3-N are"],
    ["nothing between the lines", "L-E 500 MΩ", "L-L is"],
    ["a neutral never read to earth", "L-L 700 MΩ L-N 500 MΩ L-E 300 MΩ", "N-E is"],
  ])("%s is asked for", (_, pairs, words) => {
    expect(says({ ...motor, insulation: `500 V ${pairs}` }, "insulation/pair-missing", threeLines)).toContain(words);
  });

  it.each([
    "500 V L1-L2 700 MΩ L2-L3 800 MΩ L1-L3 750 MΩ L1-E 500 MΩ L2-E 400 MΩ L3-E 450 MΩ",
    "500 V L-L 700 MΩ L-N 500 MΩ L-E 300 MΩ N-E 400 MΩ",
    '500 V joined L-E 500 MΩ "Drive"',
  ])("%s is whole", (insulation) => {
    expect(ids({ ...motor, insulation }, threeLines)).toEqual([]);
  });
});

describe("figures that nobody read, in new work", () => {
  it.each(["0.39 Ω calculated", "0.39 Ω declared", '0.39 Ω from-record "Schedule of 2015"'])(
    "R1+R2 %s proves no protective conductor",
    (R1R2) => {
      expect(ids({ R1R2 })).toEqual(["error continuity/missing"]);
      expect(says({ R1R2 }, "continuity/missing")).toContain("not measured");
      expect(ids({ R1R2 }, { ...tested, work: "existing" })).toEqual([]);
    },
  );

  it("insulation from a record is not a test of this wiring", () => {
    const insulation = '500 V L-N >999 MΩ L-E 500 MΩ N-E 700 MΩ from-record "Schedule of 2015"';
    expect(ids({ insulation })).toEqual(["error insulation/missing"]);
    expect(ids({ insulation }, { ...tested, work: "existing" })).toEqual([]);
  });

  it("Zs from a record is not this circuit's, a sum of what was measured is", () => {
    expect(ids({ Zs: '0.71 Ω from-record "Schedule of 2015"' })).toEqual(["error live/zs-missing"]);
    expect(ids({ Zs: '0.71 Ω from-record "Schedule of 2015"' }, { ...tested, work: "existing" })).toEqual([]);
    expect(ids({ Zs: "0.70 Ω calculated" })).toEqual([]);
  });

  it("R2 that was measured is enough beside a calculated R1+R2", () => {
    expect(ids({ R1R2: "0.39 Ω calculated" })).toContain("error continuity/missing");
    expect(ids({ R1R2: "0.39 Ω calculated", dead: "R2 0.24 Ω" })).not.toContain("error continuity/missing");
  });
});

describe("Zs", () => {
  it("below the scale is below its board all the same", () => {
    expect(ids({ Zs: "<0.01 Ω" })).toEqual(["warning loop/zs-below-board"]);
    expect(says({ Zs: "<0.01 Ω" }, "loop/zs-below-board")).toContain("Zs <0.01 Ω");
  });

  it("under a bound above what is expected says nothing", () => {
    expect(ids({ Zs: "<2 Ω" })).toEqual([]);
  });

  it.each(["0.50 Ω", "1.10 Ω"])("%s that is calculated and no sum is to be calculated again", (Zs) => {
    const message = says({ Zs: `${Zs} calculated` }, "loop/zs-disagrees");
    expect(message).toContain("calculate the sum again");
    expect(message).not.toContain("metal");
  });
});

describe("through an electrode", () => {
  const rcbo: Circuit = {
    device: "BS EN 61009 B16 6 kA 30 mA type A",
    more: "serves sockets\nIb 10 A",
    live: "rcd 30 mA 1x 24 ms\ntest-button ok",
  };
  const ground: Setting = {
    ...tested,
    board: board.replace("Zdb 0.31 Ω\n", ""),
    supply: supply.replace("earthing TN-S\nZe 0.30 Ω", "earthing TT\nelectrode rod 84 Ω"),
  };

  it("Zs far above the electrode is a poor connection, though the RCD would trip", () => {
    expect(ids({ ...rcbo, Zs: "84.4 Ω" }, ground)).toEqual([]);
    expect(ids({ ...rcbo, Zs: "120 Ω" }, ground)).toEqual([]);
    expect(ids({ ...rcbo, Zs: "950 Ω" }, ground)).toEqual(["information loop/zs-disagrees"]);
    expect(says({ ...rcbo, Zs: "950 Ω" }, "loop/zs-disagrees", ground)).toContain("earthing conductor");
  });

  it("with metal beside it, less than the electrode is no news", () => {
    expect(ids({ ...rcbo, Zs: "21 Ω" }, ground)).toEqual([]);
  });
});

it("an RCD that is not there is rightly not applicable", () => {
  expect(ids({ live: "rcd N/A" })).toEqual([]);
  expect(ids({ live: "rcd 30 mA 1x 24 ms" })).toEqual(["warning rcd/test-no-device"]);
});

describe("fault current", () => {
  it("7 kA at the end of a circuit whose board has 0.9 kA cannot be", () => {
    expect(ids({ live: "Ipf 7 kA" })).toEqual(["warning fault/rises-downstream"]);
    expect(says({ live: "Ipf 7 kA" }, "fault/rises-downstream")).toContain("on way 1 is above the 0.9 kA");
    expect(ids({ live: "Ipf 0.33 kA" })).toEqual([]);
  });

  it("0.095 kA is told as it is written", () => {
    const small = { ...tested, supply: supply.replace("0.95 kA", "0.095 kA") };
    expect(says({}, "fault/disagrees-with-loop", small)).toContain("Ipf 0.095 kA");
  });
});

it("a limitation on the supply of new work is one like any other", () => {
  const limited = { ...tested, supply: supply.replace("Ze 0.30 Ω", 'Ze LIM "Origin sealed"') };
  expect(ids({}, limited)).toEqual(["error record/limitation-on-new"]);
  expect(ids({}, { ...limited, work: "addition" })).not.toContain("warning record/limitation-on-new");
});

describe("circuits that read less than where they start", () => {
  const two = (one: string) =>
    [way({ Zs: "0.71 Ω" }), way({ Zs: "0.72 Ω" }).replace("way 1", "way 2")]
      .join("\n")
      .replace("Zs 0.71 Ω", `Zs ${one}`);
  const of = (lines: string, setting: Setting) =>
    findingsOf(inSetting(lines, setting).text).filter(({ check }) => check === "loop/zs-below-board");
  const slipped = { ...tested, board: board.replace("Zdb 0.31 Ω", "Zdb 3.1 Ω") };

  it("all of them: the board's figure is asked about once", () => {
    const [only, ...more] = of(two("0.71 Ω"), slipped);
    expect(more).toEqual([]);
    expect(only?.message).toContain("All 2 Zs readings are below Zdb 3.10 Ω");
    expect(inSetting(two("0.71 Ω"), slipped).text.split("\n")[(only?.line ?? 0) - 1]).toBe("Zdb 3.1 Ω");
  });

  it("one of them: that one is asked about", () => {
    expect(of(two("3.5 Ω"), slipped).map(({ message }) => message.slice(0, 9))).toEqual(["Zs 0.72 Ω"]);
  });

  it("none, where the figure is what the distributor declares as the most", () => {
    const declared = {
      ...tested,
      board: board.replace("Zdb 0.31 Ω\n", ""),
      supply: supply.replace("Ze 0.30 Ω", "Ze 0.80 Ω declared"),
    };
    expect(ids({ Zs: "0.60 Ω" }, declared)).toEqual([]);
  });
});

it("a board that reads less than what the distributor declares as the most is no news", () => {
  const declared = supply.replace("Ze 0.30 Ω", "Ze 0.80 Ω declared");
  expect(ids({}, { ...tested, supply: declared })).not.toContain("information loop/board-below-upstream");
  const measured = { ...tested, supply: supply.replace("Ze 0.30 Ω", "Ze 0.80 Ω") };
  expect(ids({}, measured)).toContain("information loop/board-below-upstream");
});

it("more flows than a declared loop lets, since that is the most it may be", () => {
  const setting = (Ze: string): Setting => ({
    ...tested,
    board: board.replace("0.31 Ω", "0.10 Ω").replace("0.9 kA", "2.4 kA"),
    supply: supply.replace("TN-S", "TN-C-S").replace("0.30 Ω", Ze).replace("0.95 kA", "2.6 kA"),
  });
  expect(ids({ Zs: "0.50 Ω" }, setting("0.35 Ω declared"))).toEqual([]);
  expect(ids({ Zs: "0.50 Ω" }, setting("0.35 Ω"))).toContain("warning fault/disagrees-with-loop");
});

describe("voltage", () => {
  it.each([
    ["198 V", "198 V is below the minimum of 216.2 V"],
    ["262 V", "262 V is above the maximum of 253 V"],
  ])("%s at the origin is asked about there", (voltage, words) => {
    const there = { ...tested, supply: `${supply}\nlive 2026-03-05 with M1 {\nvoltage ${voltage}\n}` };
    expect(ids({}, there)).toEqual(["warning live/voltage-outside"]);
    expect(says({}, "live/voltage-outside", there)).toContain(words);
  });

  it("between lines it is held against what lines have", () => {
    const between = (voltage: string) =>
      says({ ...motor, live: `phase-sequence ok\nvoltage ${voltage}` }, "live/voltage-outside", threeLines);
    expect(between("402 V")).toBeUndefined();
    expect(between("360 V")).toContain("360 V between lines is below the minimum of 374.5 V");
    expect(between("450 V")).toContain("450 V between lines is above the maximum of 438.2 V");
    expect(between("262 V")).toContain("262 V is above the maximum of 253 V");
  });
});

describe("what is suspected", () => {
  it("R2 that reads all of R1+R2 is one figure in two places", () => {
    expect(says({ dead: "R2 0.39 Ω" }, "continuity/r2-against-length")).toContain("R2 alone must be less");
    expect(says({ dead: "R2 0.39 Ω" }, "diagnosis/readings-disagree")).toBeUndefined();
  });

  it("a joint in the line of a ring is not taken for a line thinner than its neutral", () => {
    const at = "at P1 L-N 0.27 Ω L-E 0.35 Ω\nat P2 L-N 0.29 Ω L-E 0.36 Ω\nat P3 L-N 0.31 Ω L-E 0.38 Ω";
    const ring: Circuit = {
      kind: "ring",
      device: "BS EN 61009 B32 6 kA 30 mA type A",
      length: "run A 10 m P1 12 m P2 11 m P3 12 m P4 19 m A",
      more: "serves sockets\nIb 20 A",
      dead: `ends r1 0.77 Ω rn 0.47 Ω r2 0.77 Ω\n${at}\nat P4 L-N 0.30 Ω L-E 0.37 Ω`,
      R1R2: "0.38 Ω",
      Zs: "0.69 Ω",
      live: "rcd 30 mA 1x 24 ms\ntest-button ok",
    };
    const message = says(ring, "diagnosis/readings-disagree");
    expect(message).toContain("Likeliest: a poor joint of about 0.30 Ω lies in the line between the board and P1.");
  });

  it("a single high reading is not taken for cable four sizes away", () => {
    const message = says({ R1R2: "0.75 Ω", Zs: "1.05 Ω" }, "diagnosis/readings-disagree");
    expect(message).toContain("Likeliest: ");
    expect(message).not.toContain("Likeliest: the line and neutral are");
  });
});

it("a share of change is told in whole per cent", () => {
  const later = "dead 2031-03-04 with M1 {\nR1+R2 0.58 Ω\n}";
  expect(says({ later }, "drift/resistance-risen", { ...tested, work: "existing" })).toContain("by 49 %.");
});
