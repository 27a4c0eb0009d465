/** Counts and figures in what findings say, at the edges where one more or less would pass unseen. */
import { describe, expect, it } from "vitest";
import { find } from "../helpers/find.ts";

const messages = (found: ReturnType<typeof find>): string[] => found.map(({ message }) => message);

describe("a source behind the RCD of other circuits", () => {
  const board = "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A bidirectional";
  const circuit = (id: number, serves: string) =>
    `way ${id} radial "W" {\n  device BS EN 60898 B20 6 kA\n  behind east\n  serves ${serves}\n}\n`;

  it.each([
    [1, /RCD with way 2: connect/],
    [2, /RCD with way 2 and 1 more: connect/],
    [3, /RCD with way 2 and 2 more: connect/],
  ])("of %i other circuits names the first and counts the rest", (others, words) => {
    const rest = Array.from({ length: others }, (_, at) => circuit(at + 2, "sockets")).join("");
    expect(messages(find("rcd/source-shares-rcd", circuit(1, "pv") + rest, { board }))).toEqual([
      expect.stringMatching(words),
    ]);
  });
});

describe("a demand that was copied", () => {
  const supply = (lines: string) => `wayfile 1
installation "House" {
  standard BS 7671:2018+A2:2022
  supply {
${lines}
  }
  board A "Board" {
    fed-from supply
    way 1 radial "Heater" { device BS EN 60898 B16 6 kA }
    way 2 radial "Shower" { device BS EN 60898 B40 6 kA }
  }
}`;

  it.each([
    ["    cutout BS 88-3 80 A\n    demand 80 A", ["Cut-out: 80 A."]],
    ["    cutout BS 88-3 80 A\n    demand 56 A", ["Cut-out: 80 A."]],
    ["    demand 56 A", []],
  ])("shows the cut-out where there is one: %s", (lines, shown) => {
    const found = find("population/demand-copied", supply(lines));
    expect(found).toHaveLength(1);
    expect(found.flatMap(({ related }) => related.map(({ message }) => message))).toEqual(shown);
  });
});

describe("a current that is stated beside one resistive load", () => {
  const way = (load: string, Ib: string) =>
    find(
      "design/load-disagrees",
      `way 1 radial "Heater" {\n  device BS EN 60898 B40 6 kA\n  serves heating\n  load ${load} "Heater"\n  Ib ${Ib}\n}`,
    );

  // 23 kW at 230 V is 100 A and 230 W is 1 A; both a share and an ampere of difference are needed.
  it.each([
    ["23 kW", "98.5 A", 0],
    ["0.23 kW", "1.6 A", 0],
    ["23 kW", "60 A", 1],
    ["23 kW", "140 A", 1],
  ])("of %s as %s has %i findings", (load, Ib, count) => {
    expect(way(load, Ib)).toHaveLength(count);
  });
});

describe("a ratio of r2 to r1 that is out by a power of ten", () => {
  // Flat cable of 2.5 and 1.5 mm² has 12.1 / 7.41 = 1.633 (BS EN 60228): 0.44 Ω of line makes 0.72 Ω of protective conductor.
  it.each([
    ["7.19 Ω", true],
    ["0.072 Ω", true],
    ["1.23 Ω", false],
    ["0.44 Ω", false],
  ])("is a slip of the decimal point at %s: %s", (r2, isSlip) => {
    const [message = ""] = messages(
      find(
        "ring/cpc-ratio",
        `way 1 ring "Sockets" {\n  cable flat-twin line 2.5 mm² cpc 1.5 mm²\n  dead 2026-03-04 {\n    ends r1 0.44 Ω rn 0.44 Ω r2 ${r2}\n  }\n}`,
      ),
    );
    expect(message).not.toBe("");
    expect(message.includes("Check the decimal point.")).toBe(isSlip);
  });
});

describe("standing leakage behind one RCD", () => {
  const sample = (each: string, ways: number) => `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  board A "Main" {
    fed-from supply
    rcd east BS EN 61008 63 A 30 mA type A
${Array.from({ length: ways }, (_, at) => `    way ${at + 1} radial "Desk" {\n      behind east\n      leakage ${each}\n    }`).join("\n")}
  }
}`;

  // 30 % of 30 mA is 9 mA (531.3.2): 18 mA are two times that, and 19.5 mA need a third RCD.
  it.each([
    ["4.5 mA", 4, "between 2 RCDs"],
    ["6.5 mA", 3, "between 3 RCDs"],
    ["6 mA", 2, "between 2 RCDs"],
  ])("of %s in each of %i circuits is divided %s", (each, ways, words) => {
    expect(messages(find("rcd/leakage-too-high", sample(each, ways)))).toEqual([expect.stringContaining(words)]);
  });
});

describe("a point that an observation names", () => {
  const inspected = (line: string) =>
    find(
      "inspection/unknown-circuit",
      `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    observation 1 C2 "No earth" board A ${line}
  }
  board A {
    way 1 ring "Sockets" {
      run A 5 m S1 5 m A
    }
    way 2 radial "Oven"
  }
}`,
    );

  it.each([
    ["way 1 at S1", 0],
    ["way 1 at S9", 1],
    ["way 2 at S9", 0],
    ["way 1", 0],
  ])("is looked for in the runs of its way, where they are drawn: %s", (line, count) => {
    expect(inspected(line)).toHaveLength(count);
  });
});
