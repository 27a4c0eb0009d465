/** What a finding says besides its place: how grave it is, what would put it right, and what it looked at. */
import { describe, expect, it } from "vitest";
import { findingOf } from "../../server/rules/frame/rule.ts";
import { find, fixed } from "../helpers/find.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const messages = (found: ReturnType<typeof find>): string[] => found.map(({ message }) => message);
const related = (found: ReturnType<typeof find>): string[] =>
  found.flatMap((one) => one.related.map(({ message }) => message));

describe("supplementary bonding that is omitted", () => {
  const rail = (place: string) =>
    find(
      "place/bonding-omitted",
      `way 1 radial "Rail" {
  device BS EN 60898 B6 6 kA
  serves heating
  place ${place}
  supplementary-bonding not-fitted
}`,
    );

  // 701.415.2 leaves a way out, 702.415.2 does not.
  it.each([
    ["bathroom", /no RCD of 30 mA or less: fit it, or record why it is not needed\./],
    ["pool", /this location always requires it: fit it\. /],
  ])("in a %s", (place, words) => {
    expect(messages(rail(place))).toEqual([expect.stringMatching(words)]);
    expect(related(rail(place))).toHaveLength(2);
    expect(rail(place).map(({ working }) => working !== undefined)).toEqual([place === "bathroom"]);
  });
});

describe("a protective conductor that is too small", () => {
  const fixOf = (cable: string, device: string) =>
    find("design/cpc-too-small", `way 1 radial "Heater" {\n  device ${device}\n  cable ${cable}\n  length 5 m\n}`, {
      supply: "earthing TN-S\nZe 0.05 Ω\nIpf 6 kA",
    }).map((one) => /cable\s+(.*)/.exec(one.fixes.length > 0 ? fixed(one) : "")?.[1]);

  // Flat cable is sold as 1.5/1.0, 2.5/1.5, 4/1.5, 6/2.5 mm² (BS 6004, common practice): it is another cable, whole.
  it.each([
    ["flat-twin line 1.5 mm² cpc 1 mm²", "BS 3036 30 A", ["flat-twin line 2.5 mm² cpc 1.5 mm²"]],
    ["flat-twin line 1.5 mm² cpc 1 mm²", "BS EN 60898 C63 10 kA", ["flat-twin line 6 mm² cpc 2.5 mm²"]],
    ["flat-twin line 2.5 mm² cpc 1.5 mm²", "BS EN 60898 C63 10 kA", ["flat-twin line 6 mm² cpc 2.5 mm²"]],
    ["flat-twin line 4 mm² cpc 1.5 mm²", "BS EN 60898 C63 10 kA", ["flat-twin line 6 mm² cpc 2.5 mm²"]],
    ["flat-twin line 6 mm² cpc 2.5 mm²", "BS EN 60898 C63 10 kA", []],
    [
      "multicore 70 °C cores 3 line 2.5 mm² cpc 1.5 mm²",
      "BS EN 60898 C63 10 kA",
      ["multicore 70 °C cores 3 line 2.5 mm² cpc 2.5 mm²"],
    ],
    ["singles 70 °C line 1.5 mm² cpc 1 mm²", "BS EN 60898 C63 10 kA", ["singles 70 °C line 1.5 mm² cpc 2.5 mm²"]],
  ])("%s behind %s becomes %j", (cable, device, expected) => {
    expect(fixOf(cable, device)).toEqual(expected);
  });
});

it("a loop that does not fit the length names one line of the length, however many there are", () => {
  for (const length of ["length 25 m", "run A 10 m P1 15 m P2", "run A 10 m P1\n  run P1 15 m P2"]) {
    const way = `way 1 radial "Bench" {
  device BS EN 61009 B16 6 kA 30 mA type A
  cable flat-twin line 2.5 mm² cpc 1.5 mm²
  ${length}
  live 2026-03-05 {
    Zs 1.90 Ω
  }
}`;
    expect(related(find("loop/zs-against-length", way, { stage: "tested" }))).toEqual([
      "Ze 0.30 Ω.",
      "Length used for the expected reading.",
    ]);
  }
});

// Where no allowances are published for a use, the sum without any is no demand, and only says how far it could go.
it.each([
  ["dwelling", "warning", /with diversity/],
  ["industrial", "information", /with every circuit in full/],
] as const)("circuits over the cut-out of a %s are a %s", (premises, severity, words) => {
  const ways = [1, 2, 3, 4].map((id) => `way ${id} radial "Heater" {\n  device BS EN 60898 B32 6 kA\n  load 7 kW\n}`);
  const supply = "earthing TN-S\nZe 0.05 Ω\nIpf 6 kA\ncutout BS 1361 60 A";
  const found = find("demand/over-cutout", ways.join("\n"), { premises, supply });
  expect(found.map((one) => one.severity)).toEqual([severity]);
  expect(messages(found)[0]).toMatch(words);
});

describe("a check keeps to its own", () => {
  it.each([
    [">1.5 MΩ", 0],
    ["0.9 MΩ", 0],
    ["1.0 MΩ", 1],
    ["1.9 MΩ", 1],
    ["2.0 MΩ", 0],
  ])("of insulation that passes but is low, from the limit to 2 MΩ: %s", (reading, count) => {
    const way = `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation 500 V L-N 310 MΩ L-E ${reading} N-E 290 MΩ
  }
}`;
    expect(find("insulation/low-on-new", way)).toHaveLength(count);
  });

  const column = (readings: readonly string[]) => `way 1 ring "Sockets" {
  cable flat-twin line 4 mm² cpc 1.5 mm²
  run A 3 m S1 27 m S2 25 m S3 25 m S4 17 m S5 3 m A
  dead 2026-03-04 {
    ends r1 0.46 Ω rn 0.46 Ω r2 1.21 Ω
    ${readings.map((earth, at) => `at S${at + 1} L-N 0.23 Ω${earth}`).join("\n    ")}
  }
}`;
  const same = " L-E 0.38 Ω";
  it.each([
    [[same, same, same, same, same], 1],
    [[same, same, same, same, ""], 0],
    [["", same, same, same, same], 0],
    [[same, same, same], 0],
    [[same, same, same, same, " L-E 0.39 Ω"], 0],
  ])("of a column that was copied: %j", (readings, count) => {
    expect(find("ring/identical-readings", column(readings))).toHaveLength(count);
  });

  it.each([
    ["0.24 Ω", 0],
    [">0.24 Ω", 1],
    ["<0.40 Ω", 0],
    ["0.25 Ω", 1],
  ])("of a limit that is written, at the limit and beyond a bound: Zs %s", (Zs, count) => {
    const way = `way 1 feeder "Plant" {
  device BS EN 60947-2 160 A 36 kA
  max-Zs 0.24 Ω
  live 2026-03-05 {
    Zs ${Zs}
  }
}`;
    expect(find("loop/zs-over-written-limit", way, { stage: "tested" })).toHaveLength(count);
  });

  it.each([
    ["island “Battery”", 1],
    ["island “Battery” electrode 84 Ω", 0],
    ["island “Battery”\nelectrode 84 Ω", 0],
    ["island “Battery”\nelectrode", 0],
  ])("of a source alone without an electrode, wherever it is written or half written: %s", (lines, count) => {
    const text = inSetting("", { supply: `earthing TN-S\nZe 0.20 Ω\n${lines.replaceAll(/[“”]/g, '"')}` }).text;
    expect(findingsOf(text).filter(({ check }) => check === "network/island-without-electrode")).toHaveLength(count);
  });

  const live = (lines: string) => `way 1 ring "Sockets" {
  device BS EN 60898 B32 6 kA
  behind east
  serves sockets
  live 2026-03-05 {
    Zs 0.60 Ω
    ${lines}
  }
}`;
  const board = "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A";
  it.each([
    ["", 1],
    ["rcd 30 mA 1x 24 ms", 0],
  ])("of an RCD of the board, once something was tested: %s", (lines, count) => {
    expect(find("rcd/test-missing", live(lines), { stage: "tested", board })).toHaveLength(count);
    const untested = live("").replace(/ {2}live[^}]*}\n/, "");
    expect(find("rcd/test-missing", untested, { stage: "tested", board })).toEqual([]);
  });
});

it("a source that shares its RCD names one circuit and counts the rest", () => {
  const ways = (count: number) =>
    [
      'way 1 radial "Roof array" {\n  device BS EN 60898 B20 6 kA\n  behind east\n  serves pv\n}',
      ...Array.from({ length: count }, (_, at) => `way ${at + 2} ring "Sockets" {\n  behind east\n  serves sockets\n}`),
    ].join("\n");
  const board = "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A bidirectional";
  const shares = (count: number) => messages(find("rcd/source-shares-rcd", ways(count), { board }));
  expect(shares(1)).toEqual([expect.stringMatching(/RCD with way 2: connect/)]);
  expect(shares(3)).toEqual([expect.stringMatching(/RCD with way 2 and 2 more: connect/)]);
});

it("a method that does not fit is answered with the two that are usual", () => {
  const way = (route: string) =>
    messages(
      find(
        "design/method-against-route",
        `way 1 radial "Kiln" {\n  cable singles line 6 mm² cpc 2.5 mm²\n  route ${route}\n}`,
      ),
    );
  expect(way("conduit method C")).toEqual([expect.stringMatching(/write method B or A\./)]);
  expect(way("clipped method B")).toEqual([expect.stringMatching(/write method C\./)]);
  expect(way("ceiling method D")).toEqual([expect.stringMatching(/write method 100 or 101\./)]);
});

it("a loop over its limit is not cured by a core where the armour is the protective conductor as well", () => {
  const cures = (cable: string) =>
    find(
      "loop/design-loop-over-limit",
      `way 1 radial "Kiln" {\n  device BS EN 60898 B32 6 kA\n  cable ${cable}\n  length 150 m\n}`,
    ).flatMap(({ fixes }) => fixes.map(({ title }) => title));
  expect(cures("armoured 90 °C cores 3 line 4 mm² cpc 4 mm²")).toEqual(["Make it 10 mm² with a cpc of 10 mm²"]);
  expect(cures("armoured 90 °C cores 3 line 4 mm² cpc 4 mm² cpc-by armour")).toEqual([]);
});

/** In thousandths; what is over the limit by less than one is still over. */
it.each([
  ["1.371", -0.001],
  ["2.50", -0.825],
  ["1.60", -0.168],
])("the margin of a loop of %s Ω against 1.37 Ω is %d", (Zs, margin) => {
  const way = `way 1 radial "Kiln" {\n  device BS EN 60898 B32 6 kA\n  live 2026-03-05 {\n    Zs ${Zs} Ω\n  }\n}`;
  expect(find("loop/zs-over-limit", way, { stage: "tested" }).map((one) => one.margin)).toEqual([margin]);
});

it.each([
  [3996, 0.6],
  [10_000, 0],
  [10_001, -0.001],
])("a value of %d against a limit of 10 000 leaves a margin of %d", (value, margin) => {
  const [spot] = find("design/method-against-route", "way 1 {\n  route clipped method B\n}").map((one) => one.spot);
  if (!spot) throw new Error("The sample is not what it should be.");
  const rule = {
    id: "a/check",
    severity: "error",
    title: "",
    why: "",
    since: "0.1",
    clauses: [],
    examples: [],
  } as const;
  const report = { message: "", value: { amount: value, unit: "A" }, limit: { amount: 10_000, unit: "A" } };
  expect(findingOf(rule, spot, report).margin).toBe(margin);
});

it("R2 is more than the whole only beyond what two readings may be out by", () => {
  const way = (R2: string) => `way 1 radial "Oven" {
  cable flat-twin line 6 mm² cpc 2.5 mm²
  dead 2026-03-04 {
    R1+R2 0.32 Ω
    R2 ${R2} Ω
  }
}`;
  expect(messages(find("continuity/r2-ratio", way("0.34")))).toEqual([
    expect.stringMatching(/^R2 is 0\.34 Ω of R1\+R2/),
  ]);
  expect(messages(find("continuity/r2-ratio", way("0.36")))).toEqual([
    expect.stringMatching(/is more than R1\+R2 0\.32 Ω/),
  ]);
});

// 30 mA protects persons and is not made coarser.
it.each([
  ["30 mA", "4.5 mA", /Divide the circuits between 2 RCDs\.$/],
  ["100 mA", "40 mA", /Divide the circuits between 2 RCDs, or fit one of 300 mA\.$/],
])("leakage through an RCD of %s is answered with a coarser one only where that may be", (rcd, second, words) => {
  const way = (id: number, leakage: string) => `way ${id} radial "Desks" {\n  behind east\n  leakage ${leakage}\n}`;
  const board = `fed-from supply\nrcd east BS EN 61008 63 A ${rcd} type A`;
  const found = find("rcd/leakage-too-high", `${way(1, "6 mA")}\n${way(2, second)}`, { board });
  expect(messages(found)).toEqual([expect.stringMatching(words)]);
});

it.each([
  ["new", 1],
  ["addition", 1],
  ["existing", 0],
] as const)("a Zs that was taken from a record is asked about where the work is %s", (work, count) => {
  const way = `way 1 radial "Kiln" {\n  device BS EN 60898 B32 6 kA\n  live 2026-03-05 {\n    Zs 0.64 Ω from-record "Report of 2019"\n  }\n}`;
  expect(find("live/zs-missing", way, { stage: "tested", work })).toHaveLength(count);
});

it.each([
  ["1L2", "phase L1", 1],
  ["1L2", "phase L2", 0],
  ["1L2", "", 0],
  ["1", "phase L1", 0],
])("of a three-phase board way %s with “%s”", (id, phase, count) => {
  const setting = { supply: "earthing TN-S\nphases three\nZe 0.30 Ω", board: "fed-from supply\nphases three" };
  const way = `way ${id} radial "Kiln" {\n  ${phase}\n  Ib 30 A\n}`;
  expect(find("demand/line-against-name", way, setting)).toHaveLength(count);
  expect(find("demand/line-against-name", way)).toEqual([]);
});

describe("tests that are left out without a limitation", () => {
  it.each([
    [1, "A test is left out"],
    [2, "2 tests are left out"],
  ])("are counted: %i", (count, words) => {
    const ways = Array.from(
      { length: count },
      (_, at) => `    way ${at + 1} radial "Oven" {
      live 2026-03-05 {
        Zs LIM "Oven in use all day"
      }
    }`,
    );
    const found = find(
      "inspection/limitation-not-agreed",
      `wayfile 1
installation "House" {
  standard BS 7671:2018+A2:2022
  work existing
  inspection periodic 2026-03-05 {
    extent "All circuits"
  }
  board A "Board" {
${ways.join("\n")}
  }
}`,
    );
    expect(messages(found)).toEqual([expect.stringMatching(new RegExp(`^${words} as LIM`))]);
  });
});

describe("insulation below its minimum", () => {
  const damp = /^(?:L-E|N-E) .* Disconnect all loads, test in sections, and find the damp or the damage\.$/;
  const neutral = /^N-E .* Look for a neutral touching metal, or one shared with another circuit\.$/;
  // One pair alone points to its conductor; where another fails with it, or none is read beside it, it may be damp anywhere.
  it.each([
    ["L-N 310 MΩ  L-E 290 MΩ  N-E 0.4 MΩ", [neutral]],
    ["L-N 310 MΩ  L-E 0.6 MΩ  N-E 0.4 MΩ", [damp, damp]],
    ["L-E 290 MΩ  N-E 0.4 MΩ", [neutral]],
    ["N-E 0.4 MΩ", [damp]],
    ["L-N 310 MΩ  L-E 0.4 MΩ  N-E 290 MΩ", [damp]],
  ])("says where to look: %s", (values, expected) => {
    const way = `way 1 radial "Lights" {\n  dead 2026-03-04 {\n    insulation 500 V ${values}\n  }\n}`;
    expect(messages(find("insulation/below-minimum", way))).toEqual(
      expected.map((words) => expect.stringMatching(words)),
    );
  });
});

describe("insulation that is stated of each pair", () => {
  it.each([
    ["insulation/below-minimum", "each 0.4 MΩ", /^Each pair reads 0\.4 MΩ, below/],
    ["insulation/below-minimum", "each 310 MΩ  L-E 0.4 MΩ", /^L-E reads 0\.4 MΩ, below/],
    ["insulation/low-on-new", "each 1.4 MΩ", /^Each pair reads 1\.4 MΩ: it passes/],
    ["insulation/zero", "each 0 MΩ", /^Each pair reads 0, a short circuit/],
  ])("%s of %s names what was read", (check, values, message) => {
    const text = `way 1 radial "Lights" {\n  dead 2026-03-04 {\n    insulation 500 V ${values}\n  }\n}`;
    expect(messages(find(check, text))).toEqual([expect.stringMatching(message)]);
  });
});
