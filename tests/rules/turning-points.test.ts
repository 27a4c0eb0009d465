/** Where one condition of several turns what is found, and no sample of the check shows it. */
import { describe, expect, it } from "vitest";
import { leastFaults } from "../../server/boards/fault-levels.ts";
import { groupingFactor } from "../../server/calc/capacity-factors.ts";
import { currentOfAll } from "../../server/circuit/loads.ts";
import { placeRcdRow } from "../../server/circuit/places.ts";
import { rcdTestsOfWay, worstOfLatest } from "../../server/readings/rcd-tests.ts";
import { nearestPages } from "../../server/rules/frame/catalogue.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { find } from "../helpers/find.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const threeLines: Setting = {
  supply: "earthing TN-S\nphases three\nZe 0.20 Ω",
  board: "fed-from supply\nphases three",
};
const studied = (lines: string, setting: Setting = {}) =>
  wayOf(nodeOf(installationOf(inSetting(`way 1 radial "Bench" {\n${lines}\n}`, setting).text), "A"), "1");
const messages = (...of: Parameters<typeof find>): string[] => find(...of).map(({ message }) => message);

// BS EN 60228: 6 mm² of copper and 10 mm² of aluminium are both 3.08 mΩ/m.
it("bonding of aluminium that conducts just as well as the copper is large enough", () => {
  const of = (size: number) =>
    find("protective/bonding-too-small", 'way 1 radial "Bench" {\nIb 2 A\n}', {
      supply: `earthing TN-S\nZe 0.30 Ω\nearthing-conductor 10 mm²\nbonding structure ${size} mm² aluminium`,
    });
  expect(of(10)).toEqual([]);
  expect(of(6).map(({ limit }) => limit?.amount)).toEqual([10]);
});

// 717.411.1 leaves it to whoever supplies the unit by a source of its own; 717.415 asks it of sockets all the same.
it.each([
  ["serves sockets", "", true],
  ["serves lighting", "", true],
  ["serves sockets", "\nsource private", true],
  ["serves lighting", "\nsource private", false],
])("a mobile unit with %j and a supply with %j needs an RCD: %s", (lines, source, needed) => {
  const study = studied(`device BS EN 60898 B6 6 kA\nplace mobile-unit\n${lines}`, {
    supply: `earthing TN-S\nZe 0.30 Ω${source}`,
  });
  expect(placeRcdRow(study, "mobile-unit") !== undefined).toBe(needed);
});

// 3 × 230 V divide 6.9 kW; a load for 400 V between lines has 231 V across each third of it. Of a supply of 240 V to earth
// what is rated up to 300 V is rated to earth.
it.each([
  ["230", "", 10],
  ["240", " rated 300 V", 6900 / 900],
  ["240", " rated 301 V", 6900 / (3 * (301 / Math.sqrt(3)))],
  ["230", " rated 299 V", 6900 / 897],
  ["230", " rated 400 V", 6900 / (400 * Math.sqrt(3))],
])("a load on %s V to earth with %j takes %d A in each line", (U0, rated, current) => {
  const study = studied(`phase three\nload 6.9 kW${rated}`, {
    supply: `earthing TN-S\nphases three\nU0 ${U0} V\nZe 0.20 Ω`,
    board: "fed-from supply\nphases three",
  });
  expect(currentOfAll(study.facts.all("load"), study)).toBeCloseTo(current, 9);
});

describe("the worst of an RCD's tests on one day", () => {
  const worst = (lines: string) =>
    worstOfLatest(rcdTestsOfWay(studied(`device BS EN 61009 B16 6 kA 30 mA type A\nlive 2026-03-05 {\n${lines}\n}`)))
      ?.fact.args.noTrip !== undefined;

  it("at the rated current is the one in which it did not trip", () => {
    expect(worst("rcd 30 mA 1x 24 ms\nrcd 30 mA 1x no-trip pulsating")).toBe(true);
    expect(worst("rcd 30 mA 1x no-trip pulsating\nrcd 30 mA 1x 24 ms")).toBe(true);
  });

  it("at half of it is the one in which it tripped", () => {
    expect(worst("rcd 30 mA 0.5x no-trip\nrcd 30 mA 0.5x 180 ms pulsating")).toBe(false);
    expect(worst("rcd 30 mA 0.5x 180 ms pulsating\nrcd 30 mA 0.5x no-trip")).toBe(false);
  });
});

it("no more than five pages are meant by a word", () => {
  const found = nearestPages("rcd").map(({ id }) => id);
  expect(found.filter((id) => /\brcd\b/.test(id))).toEqual(found);
  expect(found).toHaveLength(5);
});

it("no more than five instruments are offered for a test that names none", () => {
  const before = [1, 2, 3, 4, 5, 6].map((at) => `instrument M${at} "Tester ${at}"`).join("\n");
  const [finding] = find("instrument/not-named", 'way 1 radial "Oven" {\nlive 2026-03-05 {\nZs 0.62 Ω\n}\n}', {
    stage: "tested",
    before,
  });
  expect(finding?.fixes.map(({ title }) => title)).toEqual([1, 2, 3, 4, 5].map((at) => `Add “with M${at}”`));
});

// BS EN 61439-3: a consumer unit that is marked so stands 16 kA behind its service fuse, and no more.
it.each([
  ["15.9 kA", true],
  ["16 kA", true],
  ["16.1 kA", false],
])("a consumer unit is asked about its marking where %s may flow: %s", (Ipf, asked) => {
  const [message = ""] = messages(
    "fault/breaking-capacity-exceeded",
    'way 1 radial "Bench" {\ndevice BS EN 60898 B16 6 kA\n}',
    {
      supply: `earthing TN-S\nZe 0.30 Ω\nIpf ${Ipf}\ncutout BS 88-3 100 A`,
      premises: "dwelling",
    },
  );
  expect(message.includes("write conditional-rating")).toBe(asked);
});

it("a breaker that is marked as one-way is replaced, and not asked about", () => {
  const of = (direction: string) =>
    messages(
      "rcd/unidirectional-with-source",
      `way 1 radial "Panels" {\ndevice BS EN 60898 B16 6 kA${direction}\nserves pv\n}`,
      { standard: "BS 7671:2018+A2:2022+A3:2024" },
    );
  expect(of(" unidirectional")).toEqual([expect.stringContaining("is unidirectional: fit a bidirectional one")]);
  expect(of(" bidirectional")).toEqual([]);
});

// A rise of PEFC by 9 % is none; that of Ipf by 45 % is, whichever stands first, and one without an earlier reading is passed over.
it("a fault current without an earlier reading hides no other that changed", () => {
  const text = inSetting('way 1 radial "Bench" {\nIb 2 A\n}', {
    stage: "tested",
    supply: "earthing TN-S\nlive 2026-03-05 {\nPEFC 0.9 kA\nIpf 1.6 kA\n}\nlive 2021-03-05 {\nIpf 1.1 kA\n}",
  }).text;
  expect(messages("drift/fault-current-changed", text)).toEqual([
    expect.stringContaining("from 1.1 kA on 2021-03-05 to 1.6 kA"),
  ]);
});

describe("R2 as a part of R1+R2", () => {
  const of = (lines: string, kind = "radial") =>
    messages(
      "continuity/r2-ratio",
      `way 1 ${kind} "Bench" {\ncable flat-twin line 6 mm² cpc 2.5 mm²\ndead 2026-03-04 {\n${lines}\n}\n}`,
      { stage: "dead-tested" },
    );

  it("is compared with an exact sum alone", () => {
    expect(of("R1+R2 0.52 Ω\nR2 0.15 Ω")).toHaveLength(1);
    expect(of("R1+R2 >0.52 Ω\nR2 0.15 Ω")).toEqual([]);
    expect(of("R1+R2 0.52 Ω\nR2 >0.15 Ω")).toEqual([]);
    expect(of("R1+R2 >0.52 Ω\nR2 >0.60 Ω")).toEqual([]);
    expect(of("R1+R2 0.52 Ω\nR2 0.15 Ω", "ring")).toEqual([]);
  });
});

describe("a loop above what Ze and R1+R2 give", () => {
  // 20 m of 2.5/1.5 mm² give 0.39 Ω (BS EN 60228).
  const of = (R1R2: string, Zs: string) =>
    messages(
      "loop/zs-disagrees",
      `way 1 radial "Bench" {\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nlength 20 m\ndead 2026-03-04 {\nR1+R2 ${R1R2} Ω\n}\nlive 2026-03-05 {\nZs ${Zs} Ω\n}\n}`,
      { stage: "tested" },
    );

  it("is asked about where R1+R2 is what the length gives, and not where that itself reads too little", () => {
    expect(of("0.39", "1.05")).toEqual([expect.stringContaining("above the 0.69 Ω")]);
    expect(of("0.10", "1.05")).toEqual([]);
    expect(of("0.90", "1.75")).toEqual([expect.stringContaining("above the 1.20 Ω")]);
  });
});

describe("a protective conductor behind a device whose limit nobody knows", () => {
  const of = (cpc: string) =>
    find(
      "design/cpc-too-small",
      `way 1 radial "Bench" {\ndevice BS EN 60947-2 160 A 36 kA\ncable singles 70 °C line 70 mm² cpc ${cpc} mm²\nlength 20 m\n}`,
    ).map(({ severity, limit }) => [severity, limit?.amount]);

  // Table 54.7: half of a line above 35 mm², 35 mm² of 70 mm². Less may do by 543.1.3, which cannot be calculated here.
  it("is asked about by Table 54.7, and no fault", () => {
    expect(of("35")).toEqual([]);
    expect(of("25")).toEqual([["information", 35]]);
  });
});

// Table 4C1 prints a factor for each number to nine: 0.65 for four bunched, 0.60 for five.
it.each([
  [4, 0.65],
  [5, 0.6],
])("%i circuits bunched have a factor of their own", (circuits, factor) => {
  expect(groupingFactor(circuits, "bunched")).toMatchObject({ value: factor });
});

// Table 4G1A, clipped direct: 6 mm² carries 57 A on two loaded conductors and 48 A on three.
it.each([
  ["", {}, 57],
  ["phase three\n", threeLines, 48],
] as const)("mineral cable, %j, carries by how many of its conductors are loaded", (phase, setting, Iz) => {
  const study = studied(
    `${phase}device BS EN 60898 C32 10 kA\ncable mineral line 6 mm² cpc-by sheath\nroute clipped method C\nlength 19 m`,
    setting,
  );
  expect(study.capacity?.value.value).toBe(Iz);
});

it("a load that takes nothing for what it delivers is taken as it is bought", () => {
  const study = studied("load 2.3 kW efficiency 0 %");
  expect(currentOfAll(study.facts.all("load"), study)).toBeCloseTo(10, 9);
});

// Tails of 16 mm² carry 87 A (Table 4D1A, method C): three quarters of 116 A.
it.each([
  ["116", "information"],
  ["117", "warning"],
])("tails of 16 mm² behind %s A, on which 60 A are drawn, are a matter of %s", (rating, severity) => {
  const found = find("coordination/tails-below-cutout", 'way 1 radial "Bench" {\nIb 2 A\n}', {
    supply: `earthing TN-S\nZe 0.30 Ω\ncutout BS 88-3 ${rating} A\ntails 16 mm²\ndemand 60 A`,
  });
  expect(found.map((one) => one.severity)).toEqual([severity]);
});

it("readings of one figure are alike where each is a figure, and not where one is off the scale", () => {
  const of = (LE: string) =>
    find(
      "population/equal-pairs",
      ["310", "420", "285", "390"]
        .map(
          (own, at) =>
            `way ${at + 1} radial "Bench ${at + 1}" {\ndead 2026-03-04 {\ninsulation 500 V L-N ${own} MΩ L-E ${LE}${own} MΩ N-E ${own} MΩ\n}\n}`,
        )
        .join("\n"),
      { stage: "dead-tested" },
    );
  expect(of("")).toHaveLength(1);
  expect(of(">")).toEqual([]);
});

// 411.3.3 (ii): mobile equipment outdoors of a rated current not above 32 A.
it.each([
  ["C32", 1],
  ["C40", 0],
])("equipment that is used outdoors behind %s", (rating, count) => {
  const lines = `way 1 radial "Yard" {\ndevice BS EN 60898 ${rating} 10 kA\nserves outdoor-sockets\n}`;
  expect(find("rcd/missing-outdoors", lines)).toHaveLength(count);
});

it("a time that was written in the wrong unit is offered to a tenth of a millisecond", () => {
  const lines =
    'way 1 radial "Bench" {\ndevice BS EN 61009 B20 6 kA 30 mA type A\nlive 2026-03-05 {\nrcd 30 mA 1x 0.02438 ms\n}\n}';
  expect(messages("rcd/time-too-short", lines, { stage: "tested" })).toEqual([
    expect.stringContaining("write 24.4 ms."),
  ]);
});

// 20 m of 2.5/1.5 mm² give 0.39 Ω.
it.each([
  ["39.0", "About 100 times too much"],
  ["3.90", "About 10 times too much"],
  ["0.039", "About a tenth of it"],
  ["0.004", "About a hundredth of it"],
])("R1+R2 of %s Ω names the slip of its point", (reading, words) => {
  const lines = `way 1 radial "Bench" {\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nlength 20 m\ndead 2026-03-04 {\nR1+R2 ${reading} Ω\n}\n}`;
  expect(messages("continuity/r1r2-against-length", lines, { stage: "dead-tested" })).toEqual([
    expect.stringContaining(words),
  ]);
});

it("a short word two letters off is no misspelling of a check", () => {
  expect(nearestPages("wrxng").map(({ id }) => id)).toContain("polarity/wrong");
  expect(nearestPages("wrxxg")).toEqual([]);
});

// r1 + rn are 0.88 Ω: a quarter, 0.22 Ω, at every point of crossed legs; x × (1 − x) of it, 0.14 Ω, a fifth of the way round legs
// that are not crossed.
it("a ring whose legs were not crossed is known by points that lie far from the board", () => {
  const found = (near: string) =>
    find(
      "ring/links-not-crossed",
      `way 1 ring "Bench" {\nrun A 10 m S1 15 m S2 15 m S3 10 m A\ndead 2026-03-04 {\nends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\nat S1 L-N ${near} Ω\nat S2 L-N 0.22 Ω\nat S3 L-N ${near} Ω\n}\n}`,
      { stage: "dead-tested" },
    );
  expect(found("0.14")).toHaveLength(1);
  expect(found("0.18")).toEqual([]);
});

// Between three lines flows U0 / Z; a line and the neutral, taken as large, have twice the impedance (230 V / 2 kA × 2).
it("a PSCC that is the greatest current of three lines is none of line and neutral", () => {
  const least = (PSCC: string) => {
    const node = nodeOf(
      installationOf(
        inSetting(`way 1 radial "Bench" {\nphase L1\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nlength 10 m\n}`, {
          ...threeLines,
          board: `fed-from supply\nphases three\nIpf 2 kA${PSCC}`,
        }).text,
      ),
      "A",
    );
    return leastFaults(node, wayOf(node, "1")).neutral?.value;
  };
  // 10 m of 7.41 mΩ/m out and back, warm: × 1.2.
  const loop = 0.01 * 2 * 7.41 * 1.2;
  expect(least("")).toBeCloseTo((230 * 0.95) / ((2 * 230) / 2000 + loop), 0);
  expect(least("\nPSCC 2 kA")).toBe(least(""));
  expect(least("\nPSCC 1.4 kA")).toBeCloseTo((230 * 0.95) / (230 / 1400 + loop), 0);
});

describe("a board behind another", () => {
  const text = (lines: string) => `wayfile 1
installation "Tannery" {
standard BS 7671:2018+A2:2022
stage tested
supply {
earthing TN-S
Ze 0.30 Ω
Ipf 1.2 kA
}
board A "Main" {
fed-from supply
way 1 feeder "Loft" {
feeds B
}
}
board B "Loft" {
fed-from A
${lines}
way 1 radial "Oven" {
device BS EN 60898 B16 6 kA
}
}
}
`;
  const asked = (lines: string) =>
    findingsOf(text(lines)).filter(({ check }) => check === "fault/current-missing").length;

  it("is asked for its fault current, unless a line of it is half written", () => {
    expect(asked("")).toBe(1);
    expect(asked("Ipf 1.1 kA")).toBe(0);
    expect(asked("Ipf")).toBe(0);
  });
});

it("tests after the installation was signed for are no fault where their board is signed for later", () => {
  const of = (board: string) =>
    find(
      "record/signed-before-tests",
      `wayfile 1
installation "Tannery" {
standard BS 7671:2018+A2:2022
tested by "K.A." 2026-03-01
board A "Main" {
fed-from supply
${board}
way 1 radial "Oven" {
dead 2026-03-04 {
R1+R2 0.18 Ω
}
}
}
}
`,
    );
  expect(of("")).toHaveLength(1);
  expect(of('tested by "J.I." 2026-03-05')).toEqual([]);
});
