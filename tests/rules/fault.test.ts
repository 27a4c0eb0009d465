import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { find } from "../helpers/find.ts";
import { fixed, foundBy } from "../helpers/fixing.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const checksOf = (text: string) =>
  findingsOf(text)
    .map(({ check }) => check)
    .filter((check) => /^(fault|protective)\//.test(check));

const way = (device: string) => `way 1 radial "Heater" {
  device  ${device}
}`;
const strong: Setting = { supply: "earthing TN-S\nZe 0.03 Ω\nIpf 8.2 kA" };

describe("breaking capacity", () => {
  const check = "fault/breaking-capacity-exceeded";
  const of = (device: string, setting: Setting = strong) => foundBy(check, inSetting(way(device), setting).text);

  it("is held against the board's own figure before the origin's", () => {
    const board = "fed-from supply\nIpf 4.1 kA";
    expect(of("BS EN 60898 B16 6 kA")).toHaveLength(1);
    expect(of("BS EN 60898 B16 6 kA", { ...strong, board })).toEqual([]);
  });

  it("counts a tested figure before a stated one", () => {
    const board = "fed-from supply\nIpf 4.1 kA\nlive 2026-03-05 { Ipf 6.4 kA }";
    expect(of("BS EN 60898 B16 6 kA", { ...strong, board })).toHaveLength(1);
  });

  it("is met by a conditional rating or a device upstream", () => {
    const board = "fed-from supply\nconditional-rating 16 kA";
    expect(of("BS EN 60898 B16 6 kA", { ...strong, board })).toEqual([]);
    expect(of("BS EN 60898 B16 back-up 6 kA")).toEqual([]);
  });

  it("is not met by a conditional rating behind a larger fuse, or away from the origin", () => {
    const board = "fed-from supply\nconditional-rating 16 kA";
    const larger = { supply: `${strong.supply}\ncutout BS 88-2 160 A`, board };
    expect(of("BS EN 60898 B16 6 kA", larger)).toHaveLength(1);
  });

  it("is passed over where the fault current is not known", () => {
    expect(of("BS EN 60898 B16 6 kA", { supply: "earthing TN-S" })).toEqual([]);
  });

  it("passes with the fix", () => {
    const text = fixed(check, inSetting(way("BS EN 60898 B16 6 kA"), strong).text);
    expect(text).toContain("10 kA");
    expect(foundBy(check, text)).toEqual([]);
  });
});

const supply = (lines: string, board = "") => `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  supply {
${lines}
  }
  board A "Board" {
    fed-from supply
${board}
  }
}
`;

describe("fault current against the loop", () => {
  it.each([
    ["agrees", "earthing TN-C-S\nZe 0.20 Ω\nIpf 1.15 kA", []],
    ["neutral better than earth", "earthing TN-S\nZe 0.40 Ω\nIpf 1.3 kA", []],
    ["neutral far better than a lead sheath", "earthing TN-S\nZe 0.78 Ω\nIpf 1.3 kA", []],
    ["a small loop, read coarsely", "earthing TN-S\nphases three\nZe 0.02 Ω\nIpf 11.2 kA", []],
    ["declared at its greatest", "earthing TN-C-S\nZe 0.20 Ω\nIpf 16 kA declared", []],
    ["amperes for kiloamperes", "earthing TN-C-S\nZe 0.20 Ω\nIpf 1.15 A", ["fault/disagrees-with-loop"]],
    ["an electrode", "earthing TT\nZe 90 Ω\nIpf 1.1 kA", []],
    ["three-phase, doubled", "earthing TN-C-S\nphases three\nZe 0.10 Ω\nIpf 4.6 kA", []],
    ["three-phase, times √3", "earthing TN-C-S\nphases three\nZe 0.10 Ω\nIpf 3.98 kA", []],
    ["three-phase, one phase", "earthing TN-C-S\nphases three\nZe 0.10 Ω\nIpf 2.3 kA", ["fault/one-phase-figure"]],
  ])("%s", (_, lines, expected) => {
    expect(checksOf(supply(lines))).toEqual(expected);
  });

  it("rises outward only within the uncertainty of the meter", () => {
    const board = (Ipf: string) => supply("earthing TN-S\nZe 0.04 Ω\nIpf 5.4 kA", `Ipf ${Ipf}`);
    expect(checksOf(board("6.2 kA"))).toEqual([]);
    expect(checksOf(board("9.4 kA"))).toEqual(["fault/rises-downstream"]);
  });

  it.each([
    [
      "Ipf against the greater of both upstream",
      "PSCC 9 kA\nPEFC 4 kA",
      "Ipf 30 kA",
      "above the PSCC of 9 kA upstream",
    ],
    ["PSCC against Ipf upstream", "Ipf 9 kA", "PSCC 30 kA", "above the Ipf of 9 kA upstream"],
    ["Ipf beside PEFC alone, which may be the smaller", "PEFC 4 kA", "Ipf 30 kA", ""],
  ])("rises outward: %s", (_, lines, board, message) => {
    const found = find("fault/rises-downstream", supply(`earthing TN-S\nZe 0.04 Ω\n${lines}`, board));
    expect(found.map((one) => one.message).join()).toContain(message);
    expect(found).toHaveLength(message === "" ? 0 : 1);
  });

  it("the larger of the two is recorded", () => {
    const text = supply("earthing TN-S\nIpf 0.9 kA\nPSCC 1.4 kA\nPEFC 0.9 kA");
    expect(checksOf(text)).toEqual(["fault/larger-not-recorded"]);
    expect(checksOf(fixed("fault/larger-not-recorded", text))).toEqual([]);
  });

  it("PSCC from Ze is asked about only where the paths differ", () => {
    const lines = (earthing: string) => `earthing ${earthing}\nZe 0.31 Ω\nPSCC 742 A`;
    expect(checksOf(supply(lines("TN-S")))).toEqual(["fault/short-circuit-from-loop"]);
    expect(checksOf(supply(lines("TN-C-S")))).toEqual([]);
  });
});

describe("main bonding", () => {
  it("reads as long as it is: 0.08 Ω is right for 43 m of 10 mm²", () => {
    const lines = (length: string) =>
      `earthing TN-C-S\ntails 25 mm²\nbonding water 10 mm² length ${length} continuity 0.08 Ω`;
    expect(checksOf(supply(lines("43 m")))).toEqual([]);
    expect(checksOf(supply(lines("4 m")))).toEqual(["protective/bonding-reads-high"]);
  });

  it("finds the size of a conductor that was read at the board", () => {
    const text = supply(
      "earthing TN-C-S\ntails 25 mm²\nbonding gas 10 mm²",
      "dead 2026-03-04 { bonding gas continuity 0.42 Ω }",
    );
    expect(checksOf(text)).toEqual(["protective/bonding-reads-high"]);
  });

  it.each([
    ["PME, small neutral", "earthing TN-C-S\ntails 35 mm²\nbonding water 10 mm²", []],
    ["PME, larger neutral", "earthing TN-C-S\ntails 50 mm²\nbonding water 10 mm²", ["protective/bonding-too-small"]],
    ["PME, tails not known", "earthing TN-C-S\nbonding water 6 mm²", ["protective/bonding-too-small"]],
    ["half of 16 mm²", "earthing TN-S\nearthing-conductor 16 mm²\nbonding water 10 mm²", []],
    ["no more than 25 mm²", "earthing TN-S\nearthing-conductor 95 mm²\nbonding water 25 mm²", []],
    ["lightning protection", "earthing TN-C-S\ntails 25 mm²\nbonding lightning 6 mm²", []],
  ])("%s", (_, lines, expected) => {
    expect(checksOf(supply(lines))).toEqual(expected);
  });
});

describe("the earthing conductor", () => {
  it.each([
    ["as Table 54.7", "earthing TN-S\ntails 16 mm²\nearthing-conductor 16 mm²", []],
    ["below it", "earthing TN-S\ntails 16 mm²\nearthing-conductor 10 mm²", ["protective/earthing-conductor-too-small"]],
    ["through an electrode", "earthing TT\ntails 25 mm²\nearthing-conductor 6 mm²", []],
  ])("%s", (_, lines, expected) => {
    expect(checksOf(supply(lines))).toEqual(expected);
  });
});

describe("the figure of a board against what its feeder brings", () => {
  const id = "fault/below-feeder";
  const park = (own: string, { supply = "Ipf 2.4 kA", phases = "single", length = "85 m", Zdb = "" } = {}) => `wayfile 1
installation "Park" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    phases ${phases}
    Ze 0.19 Ω
    ${supply}
  }
  board R "Reception" {
    fed-from supply
    way 1 feeder "Pillar" {
      device BS 88-2 63 A 80 kA
      feeds P
      cable armoured 90 °C line 16 mm² cpc-by armour cores 4
      length ${length}
    }
  }
  board P "Pillar" {
    fed-from R
    ${Zdb}
    ${own}
  }
}`;
  const words = (...asked: Parameters<typeof park>) =>
    find(id, park(...asked)).map(({ message }) =>
      /^(.*?) that.*: (was only|was it|check)/.exec(message)?.slice(1).join(" "),
    );

  // 230 V / 2.4 kA = 0.096 Ω; 85 m of 2 × 1.15 mΩ/m = 0.196 Ω; 230 V / 0.291 Ω = 0.79 kA.
  it("that is the current to earth is told from a slip", () => {
    expect(words("Ipf 0.43 kA")).toEqual(["Ipf 0.43 kA is below the 0.79 kA was only"]);
    expect(words("Ipf 0.079 kA")).toEqual(["Ipf 0.079 kA is below the 0.79 kA check"]);
    expect(words("PSCC 0.43 kA")).toEqual(["PSCC 0.43 kA is below the 0.79 kA was only"]);
  });

  it.each([
    ["is near enough", "Ipf 0.56 kA", {}],
    ["is of the current to earth by its name", "PEFC 0.43 kA", {}],
    ["is not measured", "Ipf calculated 0.43 kA", {}],
    ["lies behind a declared maximum", "Ipf 0.43 kA", { supply: "Ipf declared 16 kA" }],
    ["lies behind nothing that was read", "Ipf 0.43 kA", { supply: "" }],
    ["differs by what a meter cannot tell", "Ipf 3.2 kA", { supply: "Ipf 9 kA", length: "1 m" }],
    ["is of one line, which another check says", "Ipf 0.5 kA", { phases: "three", Zdb: "Zdb 0.54 Ω" }],
  ])("that %s is left alone", (_, own, more) => expect(words(own, more)).toEqual([]));

  it("of three lines is compared with the current between them", () => {
    // 0.096 Ω and 85 m of 1.15 mΩ/m = 0.098 Ω: 230 V / 0.194 Ω = 1.19 kA.
    expect(words("Ipf 0.7 kA", { phases: "three" })).toEqual(["Ipf 0.7 kA is below the 1.19 kA was it"]);
  });
});
