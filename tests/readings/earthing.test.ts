/**
 * Conductors of the origin: Table 54.7 (as large as the line up to 16 mm², 16 mm² up to 35 mm², half above), Table 54.1 (in
 * the ground), Table 54.8 (bonding with PME), 544.1.1 (bonding else: half the earthing conductor, 6 to 25 mm²), and copper
 * and aluminium by BS EN 60228 (mΩ/m of copper: 6 mm² 3.08, 10 mm² 1.83, 16 mm² 1.15; of aluminium: 10 mm² 3.08, 16 mm² 1.91,
 * 25 mm² 1.20, 35 mm² 0.868).
 */
import { describe, expect, it } from "vitest";
import {
  allBonding,
  bondingNeed,
  bondingReading,
  earthingHeat,
  earthingLeast,
  earthingNeed,
  pmeBondingNeed,
  pmeNeed,
  soilNeed,
} from "../../server/readings/earthing.ts";
import { ownElectrodes } from "../../server/readings/electrode.ts";
import {
  byQuestionableLoop,
  faultPlaceAtBoard,
  faultPlaceAtOrigin,
  singlePhaseFigure,
  upstreamFaults,
} from "../../server/readings/fault-check.ts";
import { installationOf, nodeOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const installed = (supply: string, board = "") =>
  installationOf(
    `wayfile 1\ninstallation "Works" {\nstandard BS 7671:2018+A2:2022\nsupply {\n${supply}\n}\nboard A "Main" {\nfed-from supply\n${board}\n}\n}`,
  );
const supplyOf = (lines: string) => {
  const { supply, edition } = installed(lines);
  if (!supply) throw new Error("no supply");
  return { supply, edition };
};
const sizeBy =
  (need: (supply: ReturnType<typeof supplyOf>["supply"]) => { readonly value: number } | undefined) =>
  (lines: string): number | undefined =>
    need(supplyOf(lines).supply)?.value;

describe("the earthing conductor by the tails", () => {
  const need = sizeBy(earthingNeed);
  it("an electrode of a board is what its circuits rely on, but for those with one of their own", () => {
    const text = inSetting(
      `way 1 radial "Shed" {
device BS EN 61009 B16 6 kA 30 mA type A
}
way 2 radial "Field" {
earthing TT
electrode rod 40 Ω
device BS EN 61009 B16 6 kA 300 mA type A
}`,
      { board: "fed-from supply\nearthing TT\nelectrode rod 120 Ω" },
    ).text;
    // 50 V over 30 mA, and over 300 mA.
    const limits = ownElectrodes(nodeOf(installationOf(text), "A")).map(({ weakest }) => weakest?.limit.value);
    expect(limits.map((limit) => Math.round(limit ?? 0))).toEqual([1667, 167]);
  });

  it.each([
    ["earthing TN-S\ntails 10 mm²", 10],
    ["earthing TN-S\ntails 16 mm²", 16],
    ["earthing TN-S\ntails 25 mm²", 16],
    ["earthing TN-S\ntails 35 mm²", 16],
    ["earthing TN-S\ntails 50 mm²", 25],
    ["earthing TN-C-S\ntails 70 mm²", 35],
    ["earthing TT\ntails 25 mm²", undefined],
    ["earthing IT\ntails 25 mm²", undefined],
    ["tails 25 mm²", undefined],
    ["earthing TN-S", undefined],
    // Of steel by k1 / k2: 115 / 52 of 16 mm² (Tables 43.1 and 54.2).
    ["earthing TN-S\ntails 25 mm²\nearthing-conductor 50 mm² steel", (16 * 115) / 52],
  ])("%j: %s mm²", (lines, wanted) => {
    if (wanted === undefined) expect(need(lines)).toBeUndefined();
    else expect(need(lines)).toBeCloseTo(wanted, 6);
  });
});

describe("the earthing conductor by the ground", () => {
  const need = sizeBy(soilNeed);
  const of = (lines: string) => need(`earthing TT\nearthing-conductor ${lines}`);
  it.each([
    ["16 mm²", undefined],
    ["16 mm² buried", 25],
    ["16 mm² buried protected corrosion", 16],
    ["16 mm² buried protected both", undefined],
    ["16 mm² steel buried", 50],
    ["16 mm² steel buried protected corrosion", 16],
  ])("%j: %s mm²", (lines, wanted) => expect(of(lines)).toBe(wanted));
});

describe("main bonding", () => {
  it.each([
    ["earthing TN-C-S", 10],
    ["earthing TN-C-S\ntails 25 mm²", 10],
    ["earthing TN-C-S\ntails 35 mm²", 10],
    ["earthing TN-C-S\ntails 50 mm²", 16],
    ["earthing TN-C-S\ntails 70 mm²", 25],
    ["earthing TN-C-S\ntails 120 mm²", 35],
    ["earthing TN-S\nearthing-conductor 6 mm²", 6],
    ["earthing TN-S\nearthing-conductor 16 mm²", 10],
    ["earthing TN-S\nearthing-conductor 25 mm²", 16],
    ["earthing TN-S\nearthing-conductor 70 mm²", 25],
    ["earthing TT\nearthing-conductor 16 mm²", 10],
    ["earthing IT\nearthing-conductor 16 mm²", undefined],
    // Half of what is not known, or of another metal, is 6 mm² at the least.
    ["earthing TN-S\nearthing-conductor 50 mm² steel", 6],
    ["earthing TN-S", 6],
  ])("with %j: %s mm² of copper", (lines, wanted) => expect(sizeBy(bondingNeed)(lines)).toBe(wanted));

  it.each([
    ["earthing TN-S\nearthing-conductor 6 mm²", 10],
    ["earthing TN-C-S", 25],
    ["earthing TN-C-S\ntails 50 mm²", 35],
    ["earthing TN-S", 10],
  ])("with %j: %s mm² of aluminium", (lines, wanted) => {
    expect(bondingNeed(supplyOf(lines).supply, "aluminium")?.value).toBe(wanted);
  });

  it("is what the earthing conductor is no thinner than, with PME and of copper", () => {
    const both = (lines: string) => [sizeBy(pmeBondingNeed)(lines), sizeBy(pmeNeed)(lines)];
    // 16 mm² is what distributors ask for.
    expect(both("earthing TN-C-S\ntails 50 mm²")).toEqual([16, 16]);
    expect(both("earthing TN-S\nearthing-conductor 16 mm²")).toEqual([undefined, undefined]);
    expect(both("earthing TN-C-S\nearthing-conductor 50 mm² steel")).toEqual([undefined, undefined]);
  });

  it("is what is written in the supply and read on a board, but for what is missing or none", () => {
    const services = (supply: string, board?: string) =>
      allBonding(installed(supply, board)).map(({ args }) => args.service.value);
    expect(services("bonding water 10 mm²\nbonding gas 10 mm²")).toEqual(["water", "gas"]);
    expect(services("bonding water 10 mm²\nbonding gas missing")).toEqual(["water"]);
    expect(services('bonding none "Plastic pipes"')).toEqual([]);
    expect(services("bonding gas 10 mm²", "dead 2026-03-04 {\nbonding water continuity 0.05 Ω\n}")).toEqual([
      "gas",
      "water",
    ]);
  });
});

// 63 A and 100 A to BS 88-3 open in 5 s at 218.5 V / Zs (Table 41.4); a bare conductor beside others has k 143 (Table 54.2).
describe("the earthing conductor by the fault", () => {
  const heat = (lines: string) => {
    const { supply, edition } = supplyOf(`earthing TN-S\n${lines}`);
    const found = earthingHeat(supply, edition);
    return found && [Number(found.need.value.toFixed(1)), found.atMost];
  };
  const least = (lines: string) => {
    const { supply, edition } = supplyOf(lines);
    const found = earthingLeast(supply, edition)?.value;
    return found && Number(found.toFixed(1));
  };

  it("says nothing without a cut-out, a current or a system that lets enough flow", () => {
    expect(heat("Ze 0.20 Ω")).toBeUndefined();
    expect(heat("cutout BS 88-3 100 A")).toBeUndefined();
    expect(heat("cutout BS 88-3 100 A\nZe 0 Ω")).toBeUndefined();
    // It opens in 5 s at 218.5 V / 0.38 Ω = 575 A: 575 × √5 / 143 = 9.0 mm², and more current heats less.
    expect(heat("cutout BS 88-3 100 A\nPEFC 1.2 kA")).toEqual([9, true]);
    expect(heat("cutout BS 88-3 100 A\nZe 0.20 Ω")).toEqual(heat("cutout BS 88-3 100 A\nPEFC 1.15 kA"));
    const { supply, edition } = supplyOf("earthing TT\ncutout BS 88-3 100 A\nZe 0.20 Ω");
    expect(earthingHeat(supply, edition)).toBeUndefined();
  });

  it("takes what was read before the loop, and says where a greater one would heat no more", () => {
    expect(heat("cutout BS 88-3 100 A\nPEFC 20 A\nZe 0.20 Ω")).toBeUndefined();
    const remarks = (PEFC: string) => {
      const { supply, edition } = supplyOf(`earthing TN-S\ncutout BS 88-2 63 A\nPEFC ${PEFC}`);
      const found = earthingHeat(supply, edition);
      return [found?.atMost, JSON.stringify(found?.need.steps).includes("no more energy")];
    };
    // 63 A to BS 88-2: 5 s at 280 A, 0.4 s at 497 A.
    expect(remarks("0.4 kA")).toEqual([false, false]);
    expect(remarks("1.2 kA")).toEqual([true, true]);
  });

  it("of two that ask the same is told by the table first", () => {
    const { supply, edition } = supplyOf(
      "earthing TN-S\ntails 25 mm²\nearthing-conductor 16 mm² buried protected corrosion",
    );
    expect(earthingLeast(supply, edition)?.source.ref).toContain("54.7");
  });

  it("goes before the table where what is there bears the fault, and is otherwise left to it", () => {
    const common = "earthing TN-S\ntails 25 mm²\ncutout BS 88-3 100 A\nPEFC 1.2 kA";
    const [need = Number.NaN] = heat("cutout BS 88-3 100 A\nPEFC 1.2 kA") ?? [];
    expect(least(`${common}\nearthing-conductor 10 mm²`)).toBe(need);
    expect(least(`${common}\nearthing-conductor 4 mm²`)).toBe(16);
    expect(least(common)).toBe(16);
    expect(least(`${common}\nearthing-conductor 10 mm² buried`)).toBe(25);
    expect(least(common.replace("TN-S", "TN-C-S").concat("\nearthing-conductor 10 mm²"))).toBe(10);
  });
});

// 10 mm² copper is 1.83 mΩ/m. Half as much again, or 0.05 Ω for clamps and leads: common practice, whichever is more.
it.each([
  [10, 10, 0.0183 + 0.05],
  [10, 50, 0.0915 + 0.05],
  [10, 60, 0.1098 * 1.5],
])("bonding of %i mm², %i m, reads %d Ω at most", (csa, length, most) => {
  expect(bondingReading(csa, length)?.most.value).toBeCloseTo(most, 9);
});

// 230 V over the loop; a loop tester may be 0.02 Ω out there (common practice), and no loop is less than half of that.
describe("an earth fault current by the loop", () => {
  const place = (lines: string) => {
    const [found] = faultPlaceAtOrigin(installed(lines));
    if (!found) throw new Error("no place");
    return found;
  };
  it.each([
    ["0.20 Ω", 230 / 0.22, 230 / 0.18],
    ["0.03 Ω", 230 / 0.05, 230 / 0.01],
    ["0.02 Ω", 230 / 0.04, 230 / 0.01],
  ])("of %s is %d to %d A", (Ze, less, more) => {
    const found = place(`earthing TN-S\nZe ${Ze}\nIpf 1.2 kA`);
    expect(byQuestionableLoop(found, "less")).toBeCloseTo(less, 6);
    expect(byQuestionableLoop(found, "more")).toBeCloseTo(more, 6);
  });

  it("is asked for where both are noted", () => {
    const count = (lines: string) => faultPlaceAtOrigin(installed(lines)).length;
    expect(count("earthing TN-S\nZe 0.20 Ω\nIpf 1.2 kA")).toBe(1);
    expect(count("earthing TN-S\nZe 0.20 Ω\nIpf <1.2 kA")).toBe(1);
    expect(count("earthing TN-S\nZe 0.20 Ω")).toBe(0);
    expect(count("earthing TN-S\nIpf 1.2 kA")).toBe(0);
    expect(count("earthing TN-S\nZe 0 Ω\nIpf 1.2 kA")).toBe(0);
  });

  it("at a board is asked for where the board has both itself", () => {
    const count = (board: string) =>
      installed("earthing TN-S\nZe 0.20 Ω\nIpf 1.2 kA", board).boards.flatMap(({ context }) =>
        faultPlaceAtBoard(context),
      ).length;
    expect(count("live 2026-03-05 {\nZdb 0.21 Ω\nIpf 1.1 kA\n}")).toBe(1);
    expect(count("live 2026-03-05 {\nZdb 0.21 Ω\n}")).toBe(0);
    expect(count("live 2026-03-05 {\nIpf 1.1 kA\n}")).toBe(0);
  });

  it.each([
    ["TN-C-S", true],
    ["TN-C", true],
    ["TN-S", false],
    ["TT", false],
  ])("with %s goes through the neutral's conductor: %s", (system, combined) => {
    expect(place(`earthing ${system}\nZe 0.20 Ω\nIpf 1.2 kA`)).toMatchObject({ combined, tt: system === "TT" });
  });

  it("is compared with the nearest above that has one, or with the origin", () => {
    const above = (main: string) => {
      const text = `wayfile 1\ninstallation "Works" {\nsupply {\nIpf 1.2 kA\n}\nboard A "Main" {\nfed-from supply\n${main}\nway 1 feeder "F" {\nfeeds B\n}\n}\nboard B "Annexe" {\nfed-from A\n}\n}`;
      const annexe = installationOf(text).boards.find(({ board }) => board.head.name === "B");
      return annexe && upstreamFaults(annexe.context).map(({ name, value }) => [name, value]);
    };
    expect(above("live 2026-03-05 {\nIpf 1.1 kA\n}")).toEqual([["Ipf", 1100]]);
    expect(above("live 2026-03-05 {\nPSCC 1 kA\nPEFC 0.9 kA\n}")).toHaveLength(2);
    expect(above("")).toEqual([["Ipf", 1200]]);
  });

  // Of 0.21 Ω at most 1000 A is one phase; three have 1.6 times that at the least (common practice).
  it.each([
    ["phases three\nIpf 1.59 kA", 1000],
    ["phases three\nIpf 1.6 kA", undefined],
    ["Ipf 1.59 kA", undefined],
    // A figure of its own to neutral is more than the loop to earth gives.
    ["phases three\nIpf 1.7 kA\nPSCC 1.1 kA", 1100],
    ["phases three\nIpf 1.76 kA\nPSCC 1.1 kA", undefined],
    ["phases three\nIpf 1.59 kA\nPSCC 0.9 kA", 1000],
    ["phases three\nIpf 1.59 kA\nPSCC 1.59 kA", 1000],
  ])("with %j, of three phases, is that of one: %s", (lines, single) => {
    const found = singlePhaseFigure(place(`earthing TN-S\nZe 0.21 Ω\n${lines}`));
    expect(found && Math.round(found.single)).toBe(single);
  });
});
