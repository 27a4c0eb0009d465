/** Every kind of reading held against itself on another day. */
import { describe, expect, it } from "vitest";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const meter = `instrument M1 "Tester" {
  accuracy continuity 2 % 2 digits
  accuracy loop 3 % 3 digits
}`;

interface Place {
  readonly supply?: string;
  readonly board?: string;
}

function drifts(lines: string, { supply, board }: Place = {}): string[] {
  const { text } = inSetting(lines, {
    stage: "tested",
    work: "existing",
    before: meter,
    ...(supply ? { supply: `earthing TN-S\nIpf 1.2 kA\n${supply}` } : {}),
    ...(board ? { board: `fed-from supply\nmain-switch BS EN 60947-3 100 A\n${board}` } : {}),
  });
  const all = findingsOf(text);
  expect(all.filter(({ check }) => check.startsWith("language/"))).toEqual([]);
  return all.filter(({ check }) => check.startsWith("drift/")).map(({ check, message }) => `${check}: ${message}`);
}

const days = (kind: string, was: string, now: string): string =>
  `${kind} 2021-03-04 with M1 {\n${was}\n}\n${kind} 2026-03-04 with M1 {\n${now}\n}`;
const way = (lines: string, kind = "radial") =>
  `way 1 ${kind} "Bench" {\ndevice BS EN 61009 B16 6 kA 30 mA type A\n${lines}\n}`;
const idle = way("");

type Row = readonly [what: string, now: string[], lines: string, place?: Place];

const risen: readonly Row[] = [
  ["Zs", ["Zs rose"], way(days("live", "Zs 0.62 Ω", "Zs 0.91 Ω"))],
  ["Zs at a point", ["Zs at S1 rose"], way(`run A 9 m S1\n${days("live", "at S1 Zs 0.62 Ω", "at S1 Zs 0.91 Ω")}`)],
  ["R1+R2", ["R1+R2 rose"], way(days("dead", "R1+R2 0.41 Ω", "R1+R2 0.60 Ω"))],
  ["R2", ["R2 rose"], way(days("dead", "R2 0.41 Ω", "R2 0.60 Ω"))],
  [
    "the ends of a ring, once a line",
    ["r1 end to end rose"],
    way(days("dead", "ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω", "ends r1 0.61 Ω rn 0.61 Ω r2 0.99 Ω"), "ring"),
  ],
  [
    "a point of a ring",
    ["L-E at S1 rose"],
    way(`run A 9 m S1 9 m A\n${days("dead", "at S1 L-N 0.22 Ω L-E 0.29 Ω", "at S1 L-N 0.22 Ω L-E 0.45 Ω")}`, "ring"),
  ],
  ["Ze", ["Ze rose"], idle, { supply: days("live", "Ze 0.22 Ω", "Ze 0.48 Ω") }],
  [
    "Ze of the plain lines",
    ["Ze rose"],
    idle,
    { supply: "Ze 0.22 Ω\nmeasured 2021-03-04\nlive 2026-03-04 {\nZe 0.48 Ω\nIpf 1.2 kA\n}" },
  ],
  ["Zdb", ["Zdb rose"], idle, { board: days("live", "Zdb 0.32 Ω", "Zdb 0.58 Ω") }],
  ["RA", ["RA rose"], idle, { supply: days("live", "electrode rod 40 Ω", "electrode rod 71 Ω") }],
  [
    "bonding",
    ["Bonding of water rose"],
    idle,
    { board: days("dead", "bonding water continuity 0.03 Ω", "bonding water continuity 0.14 Ω") },
  ],
  ["Ipf of a board", ["Ipf rose"], idle, { board: days("live", "Ipf 1.1 kA", "Ipf 1.9 kA") }],
  ["Ipf of the supply", ["Ipf fell"], idle, { supply: days("live", "Ipf 1.2 kA", "Ipf 0.7 kA") }],
  ["an RCD's time", ["The trip time rose from 24 ms"], way(days("live", "rcd 30 mA 1x 24 ms", "rcd 30 mA 1x 131 ms"))],
  [
    "a board's insulation",
    ["L-E of board A fell"],
    idle,
    { board: days("dead", "insulation 500 V L-E 310 MΩ joined", "insulation 500 V L-E 12 MΩ joined") },
  ],
  [
    "insulation between two lines",
    ["L1-L2 fell"],
    way(days("dead", "insulation 500 V L1-L2 310 MΩ", "insulation 500 V L1-L2 12 MΩ")),
  ],
];

describe("drift is told of for", () => {
  it.each(risen.map((row) => [row[0], row] as const))("%s", (_, [, says, lines, place]) => {
    const found = drifts(lines, place).filter((one) => !one.startsWith("drift/retest-incomplete"));
    expect(
      found.map((one) => one.slice(one.indexOf(": ") + 2)).map((one, at) => one.startsWith(says[at] ?? "?")),
    ).toEqual(says.map(() => true));
  });
});

describe("drift is not told of", () => {
  const still: readonly (readonly [what: string, lines: string, place?: Place])[] = [
    ["a rise that both instruments may be out by", way(days("live", "Zs 2.50 Ω", "Zs 2.58 Ω"))],
    [
      "a warm reading and a cold one, both with their temperature",
      way(days("dead", "temperature 5 °C\nR1+R2 1.00 Ω", "temperature 35 °C\nR1+R2 1.22 Ω")),
    ],
    ["a figure that was worked out", way(days("live", "Zs 0.62 Ω", "Zs calculated 1.20 Ω"))],
    ["a reading off the scale", way(days("live", "Zs >2 Ω", "Zs 2.60 Ω"))],
    ["a limitation", way(days("live", "Zs 0.62 Ω", 'Zs LIM "In use, agreed with the owner"'))],
    ["an electrode in dry ground", idle, { supply: days("live", "electrode rod 40 Ω", "electrode rod 55 Ω") }],
    ["another test current", way(days("live", "rcd 30 mA 5x 12 ms", "rcd 30 mA 5x 13 ms\nrcd 30 mA 1x 131 ms"))],
  ];
  it.each(still.map((row) => [row[0], row] as const))("%s", (_, [, lines, place]) => {
    expect(drifts(lines, place)).toEqual([]);
  });
});

it("a rise that came little by little is held against the first day", () => {
  const creeping = ["2011", "2016", "2021", "2026"]
    .map((year, at) => `live ${year}-03-04 {\nZs ${(0.6 + at * 0.09).toFixed(2)} Ω\n}`)
    .join("\n");
  expect(drifts(way(creeping))).toEqual([expect.stringContaining("Zs rose from 0.60 Ω on 2011-03-04 to 0.87 Ω")]);
});

it("a later visit that reads something else leaves the drift before it standing", () => {
  const text = way(`${days("live", "Zs 0.62 Ω", "Zs 0.91 Ω")}\nlive 2026-03-09 {\ntest-button ok\n}`);
  expect(drifts(text)).toEqual([expect.stringContaining("Zs rose")]);
});

describe("a retest that leaves a reading out", () => {
  const skips: readonly (readonly [what: string, says: RegExp | undefined, lines: string, place?: Place])[] = [
    ["says which", /R1\+R2 was not read again/, way(days("dead", "R1+R2 0.4 Ω\npolarity ok", "polarity ok"))],
    [
      "at a point",
      /S2 was not read again/,
      way(`run A 9 m S1 9 m S2\n${days("live", "at S1 Zs 0.6 Ω\nat S2 Zs 0.7 Ω", "at S1 Zs 0.6 Ω")}`),
    ],
    ["at a board", /Ipf was not read again/, idle, { board: days("live", "Zdb 0.32 Ω\nIpf 0.9 kA", "Zdb 0.33 Ω") }],
    [
      "at the origin",
      /Polarity was not read again/,
      idle,
      { supply: days("live", "Ze 0.2 Ω\npolarity ok", "Ze 0.2 Ω") },
    ],
    [
      "but not where the tests of one visit are spread over days",
      undefined,
      way("dead 2026-03-04 {\nR1+R2 0.4 Ω\n}\ndead 2026-03-11 {\npolarity ok\n}"),
    ],
    [
      "between two conductors",
      /Insulation N-E was not read again/,
      way(days("dead", "insulation 500 V L-E 300 MΩ N-E 300 MΩ", "insulation 500 V L-E 300 MΩ")),
    ],
    [
      "of four, each of them",
      /R1\+R2, insulation L-N, insulation L-E and insulation N-E were not read again/,
      way(days("dead", "R1+R2 0.4 Ω\npolarity ok\ninsulation 500 V L-N 300 MΩ L-E 300 MΩ N-E 300 MΩ", "polarity ok")),
    ],
    [
      "of five the first three, and how many more",
      /R1\+R2, R2, insulation L-N and 2 more were not read again/,
      way(
        days(
          "dead",
          "R1+R2 0.4 Ω\nR2 0.3 Ω\npolarity ok\ninsulation 500 V L-N 300 MΩ L-E 300 MΩ N-E 300 MΩ",
          "polarity ok",
        ),
      ),
    ],
    [
      "but not where line and neutral were joined for it",
      undefined,
      way(days("dead", "insulation 500 V L-E 300 MΩ N-E 300 MΩ", "insulation 500 V L-E 300 MΩ joined")),
    ],
  ];
  it.each(skips.map((row) => [row[0], row] as const))("%s", (_, [, says, lines, place]) => {
    const [found, ...others] = drifts(lines, place);
    expect(others).toEqual([]);
    if (says) expect(found).toMatch(says);
    else expect(found).toBeUndefined();
  });
});

describe("insulation with equipment connected", () => {
  const lines = (again: string) => way(days("dead", "insulation 500 V L-E 310 MΩ", `insulation ${again}`));
  it("is a test of its own, and no fall of the one before", () =>
    expect(drifts(lines("250 V L-E 4 MΩ joined"))).toEqual([]));
  it.each(["250 V L-E 4 MΩ", "500 V L-E 4 MΩ joined"])("is not meant by %s, which fell", (again) =>
    expect(drifts(lines(again))).toHaveLength(1),
  );
});

describe("readings of years ago", () => {
  const ring = (earlier: string, later: string) =>
    findingsOf(
      inSetting(
        `way 1 ring "Bench" {
device BS EN 61009 B32 6 kA 30 mA type A
cable flat-twin line 2.5 mm² cpc 1.5 mm²
run A 9 m S1 5 m S2 4 m S3 6 m S4 16 m A
dead ${earlier} {
ends r1 0.30 Ω rn 0.30 Ω r2 0.48 Ω
at S1 L-N 0.15 Ω L-E 0.19 Ω
at S2 L-N 0.15 Ω L-E 0.20 Ω
at S3 L-N 0.15 Ω L-E 0.20 Ω
at S4 L-N 0.15 Ω L-E 0.19 Ω
}
dead ${later} {
ends r1 0.31 Ω rn 0.55 Ω r2 0.49 Ω
}
}`,
        { stage: "dead-tested", work: "existing" },
      ).text,
    )
      .filter(({ check }) => check === "diagnosis/readings-disagree")
      .map(({ message }) => message);

  it("are not explained together with those of today", () => {
    expect(ring("2021-03-04", "2026-03-04").join()).toMatch(/poor joint of about 0\.2\d Ω lies in the neutral/);
    expect(ring("2021-03-04", "2026-03-04").join()).not.toContain("null was wrong");
  });
  it("of one visit are", () => expect(ring("2026-03-03", "2026-03-04").join()).toContain("null was wrong"));

  it("make new wiring old, of which less is expected", () => {
    const low = (earlier: string) =>
      findingsOf(
        inSetting(
          way(`dead ${earlier} {\ninsulation 500 V L-E 310 MΩ\n}\ndead 2026-03-04 {\ninsulation 500 V L-E 1.6 MΩ\n}`),
          { stage: "dead-tested", work: "new" },
        ).text,
      ).filter(({ check }) => check === "insulation/low-on-new");
    expect(low("2021-03-04")).toEqual([]);
    expect(low("2026-03-03")).toHaveLength(1);
  });
});
