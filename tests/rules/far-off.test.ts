/** Readings that are off the scale, far off, or stand where another reading of the circuit hides them. */
import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const found = (lines: string, setting: Setting = {}): string[] =>
  findingsOf(inSetting(lines, { stage: "tested", ...setting }).text).map(
    ({ check, severity, message }) => `${severity} ${check}: ${message}`,
  );

const one = (finding: string): unknown => expect.arrayContaining([expect.stringContaining(finding)]);

const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute clipped method C\nlength 12 m\nserves heating\nIb 5 A";
const way = (dead: string, live: string, device = "BS EN 60898 B16 6 kA"): string =>
  `way 1 radial "Load" {\ndevice ${device}\n${twin}\nrun A 6 m S1 6 m S2\ndead 2026-03-04 {\n${dead}\n}\nlive 2026-03-05 {\n${live}\n}\n}`;
const rcbo = "BS EN 61009 B16 6 kA 30 mA type A";
const ring = (dead: string): string =>
  `way 1 ring "Sockets" {\ndevice BS EN 61009 B32 6 kA 30 mA type A\n${twin.replace("12 m", "60 m").replace("heating", "sockets")}\ndead 2026-03-04 {\n${dead}\n}\n}`;
const tt = "earthing TT\nelectrode rod 84 Ω\nIpf 1.2 kA";
const three: Setting = {
  supply: "earthing TN-S\nphases three\nZe 0.20 Ω\nIpf 2.2 kA",
  board: "fed-from supply\nphases three\nmain-switch BS EN 60947-3 100 A four-pole",
};
const saw = (dead: string, live: string): string =>
  `way 1 radial "Saw" {\ndevice BS EN 60898 C16 four-pole 6 kA\nphase three\ncable multicore 70 °C line 2.5 mm² cpc 2.5 mm² cores 5\nroute clipped method C\nlength 12 m\nserves heating\nIb 5 A\ndead 2026-03-04 {\n${dead}\n}\nlive 2026-03-05 {\n${live}\n}\n}`;

describe("a line of three", () => {
  it("that is open, or whose loop is too high, is a fault beside a good figure of the circuit", () => {
    expect(found(saw("R1+R2 0.18 Ω L1 0.18 Ω L2 >99 Ω L3 0.17 Ω", "Zs 0.38 Ω"), three)).toEqual(
      one("error continuity/open: R1+R2 of line L2 is off scale (>99 Ω)"),
    );
    expect(found(saw("R1+R2 0.18 Ω", "Zs 0.38 Ω L1 0.38 Ω L2 3.8 Ω L3 0.37 Ω"), three)).toEqual(
      one("error loop/point-over-limit: Zs 3.8 Ω on line L2 is above the 1.37 Ω"),
    );
    expect(found(saw("R1+R2 0.18 Ω", "Zs 0.38 Ω L1 0.38 Ω L2 >20 Ω L3 0.37 Ω"), three)).toEqual(
      one("error loop/point-over-limit: Zs >20 Ω on line L2"),
    );
    const sound = saw("R1+R2 0.18 Ω L1 0.18 Ω L2 0.18 Ω L3 0.17 Ω", "Zs 0.38 Ω L1 0.38 Ω L2 0.38 Ω L3 0.37 Ω");
    expect(found(sound, three).filter((text) => /open|over-limit|highest/.test(text))).toEqual([]);
  });
});

describe("a point", () => {
  it("is judged with the sign that stands before its figure", () => {
    expect(found(way("R1+R2 0.23 Ω", "Zs 0.43 Ω\nat S2 Zs >199 Ω", rcbo))).toEqual(
      one("error loop/point-over-limit: Zs >199 Ω at S2 is above the 2.73 Ω"),
    );
    expect(found(way("R1+R2 0.23 Ω", "Zs 0.43 Ω\nat S2 Zs >2 Ω"))).toEqual(
      one("warning loop/point-over-limit: Zs >2 Ω at S2 does not prove"),
    );
  });

  it("to which the protective conductor alone was read is open in a radial and in a ring", () => {
    expect(found(way("R2 0.14 Ω\nat S2 R2 >99 Ω", "Zs 0.43 Ω"))).toEqual(
      one("error continuity/open: R2 at S2 is off scale (>99 Ω)"),
    );
    expect(found(ring("ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\nat S2 R2 >99 Ω"))).toEqual(
      one("error continuity/open: R2 at S2 is off scale (>99 Ω)"),
    );
  });
});

describe("a figure off the scale proves what it shows, and nothing more", () => {
  it.each([
    ["rcd 30 mA 1x >299 ms", "error rcd/time-over-limit: Over 299 ms at 1 × IΔn is not within the 300 ms"],
    ["rcd 30 mA 1x >200 ms", "warning rcd/time-over-limit: Over 200 ms at 1 × IΔn does not prove"],
  ])("%s", (line, finding) => {
    expect(found(way("R1+R2 0.23 Ω", `Zs 0.43 Ω\n${line}`, rcbo))).toEqual(one(finding));
  });

  it("of an electrode, of a fault current, and in kΩ", () => {
    const circuit = way("R1+R2 0.23 Ω", "Zs 85 Ω", rcbo);
    expect(found(circuit, { supply: tt.replace("84 Ω", ">200 Ω") })).toEqual(
      one("warning loop/electrode-over-limit: RA >200 Ω does not prove"),
    );
    expect(found(circuit, { supply: tt.replace("84 Ω", "8.4 kΩ") })).toEqual(
      one("error loop/electrode-over-limit: RA 8.4 kΩ"),
    );
    expect(found(circuit, { supply: tt.replace("1.2 kA", ">1.99 kA") })).toEqual(
      one("warning fault/current-missing: Ipf >1.99 kA does not prove"),
    );
    const above = found(circuit, { supply: tt.replace("1.2 kA", ">20 kA") });
    expect(above.filter((text) => text.includes("current-missing"))).toEqual([]);
    expect(above).toEqual(one("error fault/breaking-capacity-exceeded"));
  });
});

describe("an end of a ring that reads nothing", () => {
  it("is one slip of the test, and no measure of the points", () => {
    const points = "at S1 L-N 0.22 Ω L-E 0.28 Ω\nat S2 L-N 0.22 Ω L-E 0.29 Ω\nat S3 L-N 0.22 Ω L-E 0.28 Ω";
    const about = found(ring(`ends r1 0.00 Ω rn 0.44 Ω r2 0.73 Ω\n${points}`));
    expect(about.filter((text) => /(?:error|warning) (?:ring|continuity|diagnosis)\//.test(text))).toEqual([
      expect.stringContaining("error continuity/negative-or-zero: r1 reads 0.00 Ω"),
    ]);
  });

  it("and R1+R2 far above both ends together is not said to be their sum", () => {
    expect(found(ring("ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\nR1+R2 29 Ω"))).toEqual(
      one("R1+R2 reads 29 Ω. That is more than r1 + r2"),
    );
  });
});

describe("what is wrong by itself is not hidden by what is wrong above it", () => {
  const tree = (length: string): string =>
    `way 1 feeder "Annexe" {\ndevice BS 88-2 40 A 80 kA gG\nfeeds B\ncable armoured 90 °C line 6 mm² cpc 6 mm² cores 3\nroute clipped method C\nlength 90 m\nIb 38 A\n}\n}\nboard B "Annexe" {\nfed-from A\nmain-switch BS EN 60947-3 63 A\nway 1 radial "Kiln" {\ndevice BS EN 60898 B16 6 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute clipped method C\nlength ${length}\nserves heating\nIb 16 A\n}`;
  const drops = (length: string): string[] =>
    found(tree(length), { stage: "design" }).filter((text) => text.includes(" drop/"));

  it("the voltage drop of a circuit behind a feeder that leaves nothing", () => {
    expect(drops("60 m")).toEqual([
      expect.stringContaining("drop/feeder-uses-allowance"),
      expect.stringContaining("warning drop/over-limit"),
    ]);
    expect(drops("12 m")).toEqual([expect.stringContaining("drop/feeder-uses-allowance")]);
  });
});

describe("the same thing by another word", () => {
  const socket = (serves: string, place: string): string =>
    `way 1 radial "Yard" {\ndevice ${rcbo}\n${twin.replace("heating", serves)}\n${place}ingress IP20\n}`;
  it.each([
    ["outdoor-sockets", ""],
    ["sockets", "place outdoors\n"],
    ["lighting", "place public\n"],
  ])("%s %s at IP20", (serves, place) => {
    expect(found(socket(serves, place), { stage: "design" })).toEqual(one("warning place/ip-code-too-low: IP20"));
  });
});

describe("not applicable where it applies", () => {
  const house = way("R1+R2 0.23 Ω", "Zs 0.43 Ω");
  const supply = (lines: string): Setting => ({ supply: lines });

  it.each([
    ['earthing TN-S\nZe N/A "x"\nIpf 1.2 kA', "warning record/supply-incomplete: The supply lacks Ze"],
    ['earthing TT\nelectrode N/A "x"\nIpf 1.2 kA', "warning record/supply-incomplete: The supply lacks electrode"],
    ['earthing TN-S\nZe 0.20 Ω\nIpf N/A "x"', "warning record/supply-incomplete: The supply lacks Ipf"],
    [
      'earthing TN-S\nZe 0.20 Ω\nIpf 1.2 kA\nbonding water 10 mm² continuity N/A "x"',
      "warning protective/bonding-not-tested: The continuity of the water bonding",
    ],
  ])("of a supply: %s", (lines, finding) => {
    expect(found(house, supply(lines))).toEqual(one(finding));
  });

  it("is a Ze beside the Zdb of the board it is measured at", () => {
    const board = "fed-from supply\nmain-switch BS EN 60947-3 100 A\nZdb 0.20 Ω";
    const about = found(house, { ...supply('earthing TN-S\nZe N/A "Board of an existing supply"\nIpf 1.2 kA'), board });
    expect(about.filter((text) => text.includes("supply-incomplete"))).toEqual([]);
  });

  it("of an RCD of the board is no test, and of the only conductor read none of that", () => {
    const board =
      'fed-from supply\nmain-switch BS EN 61008 100 A 100 mA type A delayed\nlive 2026-03-05 {\nrcd main-switch 100 mA 1x N/A "x"\n}';
    expect(found(way("R1+R2 0.23 Ω", "Zs 85 Ω"), { supply: tt, board })).toEqual(
      one("error rcd/test-missing: No test of the main switch"),
    );
    expect(found(way('R2 N/A "x"', "Zs 0.43 Ω"))).toEqual(one("error record/not-applicable: R2 does apply here"));
    const lines = "insulation 500 V L-L 300 MΩ L-N 300 MΩ L1-E N/A L2-E 300 MΩ L3-E 300 MΩ N-E 300 MΩ";
    expect(found(saw(`R1+R2 0.18 Ω\n${lines}`, "Zs 0.38 Ω"), three)).toEqual(
      one("error record/not-applicable: Insulation resistance does apply here"),
    );
  });

  it("the insulation of a whole board off a low scale proves nothing either", () => {
    const board =
      "fed-from supply\nmain-switch BS EN 60947-3 100 A\ndead 2026-03-04 {\ninsulation 500 V L-N 20 MΩ L-E >0.5 MΩ N-E 20 MΩ\n}";
    expect(found(house, { board })).toEqual(one("warning insulation/board-below-minimum: L-E >0.5 MΩ does not prove"));
  });
});

it.each([
  ["L-E 200 MΩ", true],
  ["L-N 200 MΩ", true],
  ["N-E 200 MΩ", false],
  ["L-E 200 MΩ joined", false],
])("neutral to earth far too low, and later %s: it still stands %s", (later, stands) => {
  const found = findingsOf(
    inSetting(
      `way 1 radial "Heater" {\ndead 2026-03-04 {\ninsulation 500 V ${later}\n}\ndead 2021-03-04 {\ninsulation 500 V L-N 300 MΩ L-E 300 MΩ N-E 0.4 MΩ\n}\n}`,
    ).text,
  );
  expect(found.some(({ check }) => check === "insulation/below-minimum")).toBe(stands);
});
