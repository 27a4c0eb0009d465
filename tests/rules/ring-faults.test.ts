import { describe, expect, it } from "vitest";
import { deadFindings, idsOf } from "../helpers/dead-tests.ts";
import { find } from "../helpers/find.ts";
import { type Ring, type RingFault, ringReadings } from "../helpers/ring.ts";
import { inSetting } from "../helpers/sample.ts";

/**
 * Faults of a ring and slips of its test: 60 m of 2.5/1.5 mm² with six sockets at 5, 15, 25, 35, 45 and 55 m. Each row
 * is what a meter shows to two decimals, and the checks that should speak, with the run drawn and without it.
 */
interface Row {
  readonly name: string;
  readonly ends: string;
  readonly LN: string;
  readonly LE: string;
  readonly drawn: readonly string[];
  /** Where the way says nothing of lengths. */
  readonly bare?: readonly string[];
  readonly runs?: readonly string[];
}

const healthyN = "0.22 0.22 0.22 0.22 0.22 0.22";
const healthyE = "0.28 0.29 0.29 0.29 0.29 0.28";
const open = ">99.9";
const rows: readonly Row[] = [
  { name: "healthy", ends: "0.44 0.44 0.73", LN: healthyN, LE: healthyE, drawn: [] },
  {
    name: "line open",
    ends: `${open} 0.44 0.73`,
    LN: "0.44 0.44 0.44 0.44 0.44 0.44",
    LE: "0.70 0.66 0.61 0.61 0.66 0.70",
    drawn: ["ring/open-conductor"],
  },
  {
    name: "neutral open",
    ends: `0.44 ${open} 0.73`,
    LN: "0.44 0.44 0.44 0.44 0.44 0.44",
    LE: healthyE,
    drawn: ["ring/open-conductor"],
  },
  {
    name: "cpc open",
    ends: `0.44 0.44 ${open}`,
    LN: healthyN,
    LE: "0.47 0.51 0.56 0.56 0.51 0.47",
    drawn: ["ring/open-conductor"],
  },
  {
    name: "all three open",
    ends: `${open} ${open} ${open}`,
    LN: `${open} ${open} ${open} ${open} ${open} ${open}`,
    LE: `${open} ${open} ${open} ${open} ${open} ${open}`,
    drawn: ["ring/open-conductor"],
  },
  {
    name: "0.5 Ω joint in the line",
    ends: "0.94 0.44 0.73",
    LN: "0.30 0.30 0.30 0.30 0.30 0.30",
    LE: "0.41 0.40 0.39 0.39 0.40 0.41",
    drawn: ["ring/ends-differ"],
  },
  {
    name: "0.5 Ω joint in the cpc",
    ends: "0.44 0.44 1.23",
    LN: healthyN,
    LE: "0.34 0.36 0.37 0.37 0.36 0.34",
    drawn: ["ring/cpc-ratio"],
  },
  {
    name: "a bad contact at one outlet",
    ends: "0.44 0.44 0.73",
    LN: "0.22 0.22 0.22 0.52 0.22 0.22",
    LE: "0.28 0.29 0.29 0.59 0.29 0.28",
    drawn: ["ring/poor-contact"],
  },
  {
    name: "a 5 m spur, drawn",
    ends: "0.44 0.44 0.73",
    LN: `${healthyN} 0.30`,
    LE: `${healthyE} 0.39`,
    runs: ["S3 5 m S7"],
    drawn: [],
    bare: ["ring/point-reading"],
  },
  {
    name: "a spur off that spur, drawn",
    ends: "0.44 0.44 0.73",
    LN: `${healthyN} 0.30 0.37`,
    LE: `${healthyE} 0.39 0.49`,
    runs: ["S3 5 m S7 5 m S8"],
    drawn: ["ring/spur-off-spur"],
    bare: ["ring/point-reading"],
  },
  {
    name: "bridged from the second socket to the fifth",
    ends: "0.25 0.25 0.41",
    LN: "0.13 0.13 0.21 0.21 0.13 0.13",
    LE: "0.16 0.17 0.28 0.28 0.17 0.16",
    drawn: ["ring/bridged"],
    bare: ["ring/point-reading"],
  },
  {
    name: "bridged, and the line open inside",
    ends: "0.26 0.25 0.41",
    LN: "0.13 0.13 0.24 0.24 0.13 0.13",
    LE: "0.16 0.17 0.31 0.31 0.17 0.16",
    drawn: ["ring/bridged"],
    bare: ["ring/point-reading"],
  },
  {
    name: "line and neutral reversed at one point",
    ends: "0.44 0.44 0.73",
    LN: healthyN,
    LE: `0.28 0.29 0.29 ${open} 0.29 0.28`,
    drawn: ["ring/point-open"],
  },
  {
    name: "line and earth reversed at one point",
    ends: "0.44 0.44 0.73",
    LN: `0.22 0.22 0.22 ${open} 0.22 0.22`,
    LE: healthyE,
    drawn: ["ring/point-open"],
  },
  {
    name: "neutral and earth reversed at one point",
    ends: "0.44 0.44 0.73",
    LN: `0.22 0.22 0.22 ${open} 0.22 0.22`,
    LE: `0.28 0.29 0.29 ${open} 0.29 0.28`,
    drawn: ["ring/point-open"],
  },
  {
    name: "each leg joined to itself",
    ends: "0.44 0.44 0.73",
    LN: "0.07 0.17 0.22 0.22 0.17 0.07",
    LE: "0.09 0.22 0.28 0.28 0.22 0.09",
    drawn: ["ring/links-not-crossed"],
  },
  {
    name: "one link missing",
    ends: "0.44 0.44 0.73",
    LN: "0.44 0.44 0.44 0.44 0.44 0.44",
    LE: "0.70 0.66 0.61 0.56 0.51 0.47",
    drawn: ["ring/link-missing"],
  },
];

function wayOf({ ends, LN, LE, runs = [] }: Row, drawn: boolean): string {
  const [r1, rn, r2] = ends.split(" ");
  const [N, E] = [LN.split(" "), LE.split(" ")];
  return [
    'way 1 ring "Sockets" {',
    "cable flat-twin line 2.5 mm² cpc 1.5 mm²",
    ...(drawn
      ? ["run A 5 m S1 10 m S2 10 m S3 10 m S4 10 m S5 10 m S6 5 m A", ...runs.map((run) => `run ${run}`)]
      : []),
    "dead 2026-03-04 {",
    `ends r1 ${r1} Ω rn ${rn} Ω r2 ${r2} Ω`,
    ...N.map((value, index) => `at S${index + 1} L-N ${value} Ω L-E ${E[index]} Ω`),
    "}",
    "}",
  ].join("\n");
}

describe("faults of a ring and slips of its test", () => {
  it.each(rows.map((row) => [row.name, row] as const))("%s, with the run drawn", (_, row) => {
    expect(idsOf(deadFindings(wayOf(row, true)))).toEqual(row.drawn);
  });

  it.each(rows.map((row) => [row.name, row] as const))("%s, with no length known", (_, row) => {
    expect(idsOf(deadFindings(wayOf(row, false)))).toEqual(row.bare ?? row.drawn);
  });

  it("says each thing once where the whole ring is meant", () => {
    const whole = [
      "line open",
      "0.5 Ω joint in the line",
      "0.5 Ω joint in the cpc",
      "each leg joined to itself",
      "one link missing",
    ];
    for (const row of rows.filter(({ name }) => whole.includes(name)))
      expect(deadFindings(wayOf(row, true)), row.name).toHaveLength(1);
  });

  it("names the point and the pair", () => {
    const messageOf = (name: string) =>
      deadFindings(wayOf(rows.find((row) => row.name === name) as Row, true))[0]?.message;
    expect(messageOf("line and neutral reversed at one point")).toMatch(/^S4: .*line and neutral reversed/);
    expect(messageOf("line and earth reversed at one point")).toMatch(/^S4: .*line and earth reversed/);
    expect(messageOf("neutral and earth reversed at one point")).toMatch(/^S4: .*neutral and earth .* another circuit/);
    expect(messageOf("one link missing")).toContain("one of the two links at the board was missing");
    expect(messageOf("a bad contact at one outlet")).toMatch(/^S4 reads 0\.30 Ω too much in both rounds/);
    expect(messageOf("bridged from the second socket to the fifth")).toContain("S3 and S4");
  });
});

describe("other rings, solved as a network", () => {
  const shown = (value: number) => (Number.isFinite(value) ? value.toFixed(2) : open);
  const ringLines = (ring: Ring, sizes: string, drawn: boolean, runs: readonly string[] = []): string => {
    const { r1, rn, r2, lineNeutral, lineCpc } = ringReadings(ring);
    const stops = [0, ...ring.points, ring.length];
    const legs = stops
      .slice(1)
      .map((stop, index) => `${stop - (stops[index] ?? 0)} m ${index < ring.points.length ? `S${index + 1}` : "A"}`);
    return [
      'way 1 ring "Sockets" {',
      `cable flat-twin ${sizes}`,
      ...(drawn ? [`run A ${legs.join(" ")}`, ...runs.map((run) => `run ${run}`)] : []),
      "dead 2026-03-04 {",
      `ends r1 ${shown(r1)} Ω rn ${shown(rn)} Ω r2 ${shown(r2)} Ω`,
      ...lineNeutral.map(
        (value, index) => `at S${index + 1} L-N ${shown(value)} Ω L-E ${shown(lineCpc[index] ?? 0)} Ω`,
      ),
      "}",
      "}",
    ].join("\n");
  };
  const hundred: Ring = {
    length: 100,
    perMetre: { line: 0.00461, neutral: 0.00461, cpc: 0.0121 },
    points: [2, 20, 35, 50, 70, 85, 97],
  };

  it.each([true, false])("100 m of 4/1.5 mm² is sound, run drawn: %s", (drawn) => {
    expect(deadFindings(ringLines(hundred, "line 4 mm² cpc 1.5 mm²", drawn))).toEqual([]);
  });

  it.each([true, false])("100 m of 2.5/1.5 mm² is sound, run drawn: %s", (drawn) => {
    const long: Ring = { ...hundred, perMetre: { line: 0.00741, neutral: 0.00741, cpc: 0.0121 } };
    expect(deadFindings(ringLines(long, "line 2.5 mm² cpc 1.5 mm²", drawn))).toEqual([]);
  });

  it.each([true, false])("240 m of 6/2.5 mm² is sound, run drawn: %s", (drawn) => {
    const vast: Ring = {
      length: 240,
      perMetre: { line: 0.00308, neutral: 0.00308, cpc: 0.00741 },
      points: [5, 60, 120, 180, 230],
    };
    expect(deadFindings(ringLines(vast, "line 6 mm² cpc 2.5 mm²", drawn))).toEqual([]);
  });

  it.each([0, 1, 3, 6])("a broken cpc before stretch %i is an open conductor and nothing else", (stretch) => {
    const fault: RingFault = { kind: "open", conductors: ["cpc"], stretch };
    expect(idsOf(deadFindings(ringLines({ ...hundred, faults: [fault] }, "line 4 mm² cpc 1.5 mm²", true)))).toEqual([
      "ring/open-conductor",
    ]);
  });

  it.each([0.2, 0.5, 1, 3])("a joint of %d Ω in the neutral is told once, wherever it is", (ohms) => {
    for (const stretch of [0, 2, 5]) {
      const fault: RingFault = { kind: "joint", conductor: "neutral", stretch, ohms };
      const lines = ringLines({ ...hundred, faults: [fault] }, "line 4 mm² cpc 1.5 mm²", true);
      expect(deadFindings(lines).map(({ check }) => check)).toEqual(["ring/ends-differ"]);
    }
  });

  it("finds one missing link on a long ring of unlike conductors", () => {
    const lines = ringLines({ ...hundred, links: "one" }, "line 4 mm² cpc 1.5 mm²", true);
    expect(idsOf(deadFindings(lines))).toEqual(["ring/link-missing"]);
  });

  it("finds legs joined to themselves by their places, though none stands in the middle", () => {
    const ring: Ring = { ...hundred, points: [4, 12, 22, 80, 92], links: "same-leg" };
    expect(idsOf(deadFindings(ringLines(ring, "line 4 mm² cpc 1.5 mm²", true)))).toEqual(["ring/links-not-crossed"]);
  });

  it("judges a spur by its own length at the temperature of the test", () => {
    const spur: RingFault = { kind: "spur", from: 3, length: 12 };
    const lines = ringLines({ ...hundred, faults: [spur] }, "line 4 mm² cpc 1.5 mm²", true, ["S4 12 m S8"]);
    expect(deadFindings(lines).filter(({ check }) => check !== "ring/spur-too-long")).toEqual([]);
  });

  it("finds a poor joint in a spur", () => {
    const faults: RingFault[] = [
      { kind: "spur", from: 3, length: 6 },
      { kind: "contact", conductor: "cpc", point: 7, ohms: 0.2 },
    ];
    const found = deadFindings(ringLines({ ...hundred, faults }, "line 4 mm² cpc 1.5 mm²", true, ["S4 6 m S8"]));
    expect(found.map(({ check, message }) => [check, message.slice(0, 3)])).toEqual([["ring/point-reading", "S8 "]]);
  });
});

it("an R1+R2 below what its highest point reads has no margin in hand", () => {
  const way = `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends   r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω
    at S1  L-N 0.22 Ω  L-E 0.29 Ω
    at X1  L-N 0.30 Ω  L-E 0.39 Ω
    R1+R2  0.29 Ω
  }
}`;
  const [finding] = find("ring/r1r2-against-ring", inSetting(way, { stage: "installed" }).text);
  expect(finding?.margin).toBeLessThan(0);
});
