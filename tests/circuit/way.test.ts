/**
 * What follows from a way in its place, by itself: how many lines it has, what its loads take, what its cable carries and
 * which conductors run in its route. Capacities are those of Appendix 4 of BS 7671: 4D1A for singles, 4E4A for 90 °C
 * armoured cable, 4C1 for grouping; resistances those of BS EN 60228.
 */
import { describe, expect, it } from "vitest";
import { conductorsIn } from "../../server/circuit/conductors.ts";
import { fractionByArmour, operatingFactorOf } from "../../server/circuit/cpc.ts";
import { currentOfAll, loadTerms } from "../../server/circuit/loads.ts";
import { capacityWith, ratingFor, sizeFor } from "../../server/circuit/overload.ts";
import { originSupply } from "../../server/circuit/supply.ts";
import type { WayStudy } from "../../server/circuit/way.ts";
import { farthestSpur } from "../../server/circuit/way-resistance.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const threeLines: Setting = {
  supply: "earthing TN-S\nphases three\nZe 0.20 Ω",
  board: "fed-from supply\nphases three",
};
const studied = (lines: string, setting: Setting = {}, kind = "radial"): WayStudy =>
  wayOf(nodeOf(installationOf(inSetting(`way 1 ${kind} "Pump" {\n${lines}\n}`, setting).text), "A"), "1");

describe("three lines", () => {
  it.each([
    ["radial", "", threeLines, false],
    ["radial", "phase three", threeLines, true],
    ["radial", "phase L2", threeLines, false],
    ["feeder", "", threeLines, true],
    ["feeder", "phase L2", threeLines, false],
    ["feeder", "", {}, false],
    // A cable of three cores has no room for three lines, neutral and protective conductor.
    ["feeder", "cable armoured 90 °C line 10 mm² cpc 10 mm² cores 3", threeLines, false],
    ["feeder", "cable armoured 90 °C line 10 mm² cpc-by armour cores 4", threeLines, true],
  ] as const)("of a %s with %j", (kind, lines, setting, three) => {
    expect(studied(lines, setting, kind).threePhase).toBe(three);
  });
});

describe("the current of loads", () => {
  const of = (lines: string, setting?: Setting) => {
    const study = studied(lines, setting);
    const loads = study.facts.all("load");
    return [Number(currentOfAll(loads, study).toFixed(3)), ...Object.values(loadTerms(loads, study))];
  };

  it.each([
    ["load 2.3 kW", {}, [10, "Σ P / U", "2300 W / 230 V"]],
    ["load 2.3 kW\npower-factor 80 %", {}, [12.5, "Σ P / (U × cos φ)", "2300 W / (230 V × 0.8)"]],
    ["load 2.3 kW efficiency 80 %", {}, [12.5, "Σ P / (U × η)", "2300 W / (230 V × 0.8)"]],
    [
      "load 2.3 kW efficiency 80 %\npower-factor 50 %",
      {},
      [25, "Σ P / (U × cos φ × η)", "2300 W / (230 V × 0.5 × 0.8)"],
    ],
    ["load 2.3 kW\nload 4 A", {}, [14, "Σ P / U", "2300 W / 230 V + 4 A"]],
    ["phase three\nload 6.9 kW", threeLines, [10, "Σ P / (3 × U0)", "6900 W / 690 V"]],
    ["phase L1\nload 2.3 kW", threeLines, [10, "Σ P / U", "2300 W / 230 V"]],
  ] as const)("%j", (lines, setting, wanted) => expect(of(lines, setting)).toEqual(wanted));
});

describe("the kind of a supply, by its voltage to earth", () => {
  const kind = (U0: string) =>
    originSupply(installationOf(inSetting("", { supply: `earthing TN-S\nU0 ${U0} V` }).text).supply).kind;

  // 230 V +10 % −6 %; 411.8: reduced low voltage is to 63.5 V, above extra-low voltage of 50 V.
  it.each([
    ["230", "public"],
    ["253", "public"],
    ["254", "other"],
    ["217", "public"],
    ["216", "other"],
    ["63.5", "reduced"],
    ["55", "reduced"],
    ["50.1", "reduced"],
    ["50", "other"],
    ["64", "other"],
  ])("%s V is %s", (U0, wanted) => expect(kind(U0)).toBe(wanted));
});

describe("what a cable carries", () => {
  const carries = (lines: string, setting?: Setting) => {
    const value = studied(lines, setting).capacity?.value.value;
    return value === undefined ? undefined : Number(value.toFixed(2));
  };
  const armoured = (more: string, route: string) =>
    `cable armoured 90 °C line 16 mm² cpc 16 mm² cores 3 ${more}\nroute ${route}`;

  it.each([
    // 4D1A in conduit, two and three loaded; 0.8 beside a second circuit and 0.7 beside two.
    ["cable singles line 6 mm² cpc 2.5 mm²\nroute conduit method B", {}, 41],
    ["cable singles line 6 mm² cpc 2.5 mm²\nroute conduit method B grouped 1", {}, 41],
    ["cable singles line 6 mm² cpc 2.5 mm²\nroute conduit method B grouped 2", {}, 32.8],
    ["cable singles line 6 mm² cpc 2.5 mm²\nroute conduit method B grouped 3", {}, 28.7],
    ["phase three\ncable singles line 6 mm² cpc 2.5 mm²\nroute conduit method B", threeLines, 36],
    // 4E4A, clipped: 110 A. Two in parallel warm each other as two circuits do.
    [armoured("", "clipped method C"), {}, 110],
    [armoured("parallel 2", "clipped method C"), {}, 2 * 110 * 0.8],
    [armoured("parallel 2", "clipped method C grouped 2"), {}, 2 * 110 * 0.7],
  ] as const)("%j", (lines, setting, wanted) => expect(carries(lines, setting)).toBeCloseTo(wanted, 1));

  it.each([
    ["route conduit method B", "no cable"],
    ["cable singles line 6 mm² cpc 2.5 mm²", "no route"],
  ])("%j: %s", (lines) => expect(carries(lines)).toBeUndefined());
});

describe("what would do instead", () => {
  const conduit = "cable singles line 4 mm² cpc 2.5 mm²\nroute conduit method B";

  it("is the smallest rating that carries the load, as far as the cable allows", () => {
    const of = (more: string) => ratingFor(studied(`device BS EN 60898 B50 6 kA\n${more}`));
    expect(of(`${conduit}\nIb 22 A`)).toBe(25);
    expect(of(`${conduit}\nIb 25 A`)).toBe(25);
    expect(of(`${conduit}\nIb 25.1 A`)).toBe(32);
    expect(of(`${conduit}\nIb 32.1 A`)).toBeUndefined();
    expect(of(conduit)).toBeUndefined();
    expect(of("Ib 22 A")).toBeUndefined();
  });

  // 4D1A in conduit: 32 A of 4 mm², 41 A of 6 mm², 57 A of 10 mm².
  it("is the next size that carries it", () => {
    const study = studied(conduit);
    expect([sizeFor(study, 33), sizeFor(study, 41), sizeFor(study, 41.1), sizeFor(study, 57)]).toEqual([6, 6, 10, 10]);
  });

  // Table 4E4A, method D: 53 A of 6 mm², of which 433.1.203 leaves 0.9 to a device: 47.7 A.
  it("in the ground is the next size that leaves enough in hand", () => {
    const study = studied(
      "device BS EN 60898 C32 6 kA\ncable armoured 90 °C line 2.5 mm² cpc-by armour cores 3\nroute buried method D depth 700 mm",
    );
    expect(capacityWith(study, 6)?.value).toBe(53);
    expect([sizeFor(study, 47), sizeFor(study, 48), sizeFor(study, 53)]).toEqual([6, 10, 10]);
  });
});

// What is stated of a cable is of its own size: of another the tables know.
it("a capacity that is stated is not that of another size", () => {
  const lines = (stated: string) => `cable singles line 4 mm² cpc 4 mm² ${stated}\nroute conduit method B`;
  const [plain, own] = [studied(lines("")), studied(lines('carries 20 A by "Sheet 3"'))];
  expect(own.capacity?.value.value).toBe(20);
  // 4D1A, method B: 32 A of 4 mm², 57 A of 10 mm².
  expect([plain.capacity?.value.value, capacityWith(plain, 10)?.value]).toEqual([32, 57]);
  expect(capacityWith(own, 10)?.value).toBe(57);
  expect(sizeFor(own, 40)).toBe(sizeFor(plain, 40));
});

// 7.41 mΩ/m of the core beside 8.2 mΩ/m of the armour: 7.41 / 15.61 of a fault goes through the armour.
it("a fault divides between a core and the armour by their resistances", () => {
  const { cable } = studied("cable armoured 90 °C line 2.5 mm² cpc 2.5 mm² cpc-by armour cores 3");
  const share = cable && fractionByArmour(cable);
  expect(share?.value).toBeCloseTo(7.41 / 15.61, 9);
  expect(share?.steps.at(-1)).toMatchObject({ numbers: "7.41 mΩ/m / (7.41 mΩ/m + 8.2 mΩ/m)", result: "47.47 %" });
});

it("the working of a factor for the protective conductor alone has no line in it", () => {
  const { cable } = studied("cable armoured 90 °C line 2.5 mm² cpc-by armour cores 3");
  const last = (of: readonly ("line" | "cpc")[]) => operatingFactorOf(cable, of)?.steps.at(-1)?.numbers;
  expect(last(["cpc"])).toMatch(/^[\d.]+ mΩ \/ 8\.2 mΩ$/);
  expect(last(["line", "cpc"])).toMatch(/^\(7\.41 mΩ × [\d.]+ \+ [\d.]+ mΩ\) \/ \(7\.41 mΩ \+ 8\.2 mΩ\)$/);
});

// BS EN 61439-1, 7.1.1: an assembly is rated where the air averages 35 °C.
it.each([
  ["", 250],
  ["ambient 35 °C", 250],
  ["ambient 36 °C", undefined],
  ['ambient 40 °C factor 90 % by "Sheet 3"', 225],
])("busbar trunking %s carries what its maker states up to the temperature it is rated at", (at, wanted) => {
  const { capacity } = studied(
    `cable busbar-trunking line 122 mm² cpc-by casing carries 250 A r1 0.26 mΩ/m r1-hot 0.33 mΩ/m by "Sheet 3"\nroute clipped ${at}`,
  );
  expect(capacity?.value.value).toBe(wanted);
});

// (0.33 + 0.25) / (0.26 + 0.21): what its maker states hot, over what he states cold.
it("the factor of busbar trunking is that of its figures hot and cold", () => {
  const { cable } = studied(
    'cable busbar-trunking line 122 mm² cpc-by casing carries 250 A r1 0.26 mΩ/m r2 0.21 mΩ/m r1-hot 0.33 mΩ/m r2-hot 0.25 mΩ/m by "Sheet 3"',
  );
  const factor = operatingFactorOf(cable);
  expect(factor?.value).toBeCloseTo(0.58 / 0.47, 9);
  expect(factor?.steps.at(-1)?.numbers).toBe("0.58 mΩ / 0.47 mΩ");
});

describe("the single cables of a route", () => {
  const cores = (cable: string, route: string, setting: Setting = {}, kind = "radial", more = "") => {
    const study = studied(`${more}\ncable singles ${cable}\nroute ${route}`, setting, kind);
    const [fact] = study.facts.all("route");
    return fact ? conductorsIn(study, fact).map(({ core, csa, count }) => `${count} × ${core} ${csa}`) : [];
  };

  it.each([
    [() => cores("line 4 mm² cpc 2.5 mm²", "conduit method B"), ["1 × line 4", "1 × neutral 4", "1 × cpc 2.5"]],
    [() => cores("line 4 mm² neutral 2.5 mm²", "conduit method B"), ["1 × line 4", "1 × neutral 2.5"]],
    [
      () => cores("line 2.5 mm² cpc 1.5 mm²", "conduit method B", {}, "ring"),
      ["2 × line 2.5", "2 × neutral 2.5", "2 × cpc 1.5"],
    ],
    [() => cores("line 4 mm² cpc 2.5 mm²", "conduit method B carries line"), ["1 × line 4"]],
    [() => cores("line 4 mm² cpc 2.5 mm²", "conduit method B carries cpc"), ["1 × cpc 2.5"]],
    [
      () => cores("line 4 mm² cpc 2.5 mm²", "conduit method B", threeLines, "radial", "phase three"),
      ["1 × L1 4", "1 × L2 4", "1 × L3 4", "1 × neutral 4", "1 × cpc 2.5"],
    ],
    // Four wires of three lines and a protective conductor leave none for a neutral, two of one line neither.
    [
      () => cores("line 4 mm² cpc 2.5 mm² cores 4", "conduit method B", threeLines, "radial", "phase three"),
      ["1 × L1 4", "1 × L2 4", "1 × L3 4", "1 × cpc 2.5"],
    ],
    [() => cores("line 4 mm² cpc 2.5 mm² cores 2", "conduit method B"), ["1 × line 4", "1 × cpc 2.5"]],
    [
      () => cores("line 70 mm² cpc 35 mm² parallel 3", "trunking method B"),
      ["3 × line 70", "3 × neutral 70", "3 × cpc 35"],
    ],
    [
      () => cores("line 70 mm² cpc 35 mm² parallel 3 cpcs 1", "trunking method B legs 2"),
      ["6 × line 70", "6 × neutral 70", "2 × cpc 35"],
    ],
    [() => cores("line 4 mm² cpc 2.5 mm² cores 3", "conduit method B"), ["1 × line 4", "1 × neutral 4", "1 × cpc 2.5"]],
  ])("case %#", (found, wanted) => expect(found()).toEqual(wanted));
});

// BS 5467 as the maker's lists have it, Ω/km of the armour of 2.5 mm²: 8.8, 8.2, 7.7 and 6.8 with 2 to 5 cores.
it.each([
  [2, 8.8],
  [3, 8.2],
  [4, 7.7],
  [5, 6.8],
])("the armour of %i cores is a protective conductor of %f mΩ/m", (cores, perMetre) => {
  const study = studied(`cable armoured 90 °C line 2.5 mm² cpc-by armour cores ${cores}\nlength 100 m`);
  expect(study.expectedR1R2?.value).toBeCloseTo((7.41 + perMetre) / 10, 9);
});

it("armour of more cores than any list has is not known", () => {
  expect(studied("cable armoured 90 °C line 2.5 mm² cpc-by armour cores 7\nlength 100 m").expectedR1R2).toBeUndefined();
});

// Bars are aluminium or copper; a protective conductor that goes with them is a wire of copper: 1.15 mΩ/m of 16 mm².
it("a wire beside busbar trunking of aluminium is of copper", () => {
  const cable =
    'busbar-trunking aluminium line 122 mm² cpc 16 mm² carries 250 A r1 0.26 mΩ/m r1-hot 0.33 mΩ/m by "Sheet 3"';
  expect(studied(`cable ${cable}\nlength 100 m`).expectedR1R2?.value).toBeCloseTo((0.26 + 1.15) / 10, 9);
});

describe("the farthest spur of a ring", () => {
  // 24 m of 2.5/1.5 mm²: r1 0.178 Ω and r2 0.290 Ω, a quarter of their sum 0.117 Ω half way round. A spur adds 19.51 mΩ/m.
  const spur = (run: string, kind = "ring") =>
    farthestSpur(studied(`cable flat-twin line 2.5 mm² cpc 1.5 mm²\nrun A 12 m S1 12 m A\n${run}`, {}, kind))?.value;

  it("reads more than the ring does half way round", () => {
    expect(spur("run S1 3 m S2")).toBeCloseTo((24 * (0.00741 + 0.0121)) / 4 + 3 * 0.01951, 6);
    expect(spur("")).toBeUndefined();
  });

  // Next to the board the ring reads 0.178 × 0.290 / 0.468 = 0.110 Ω: 0.3 m of spur leave it below the middle, 0.4 m do not.
  it("may leave the ring at the board", () => {
    expect(spur("run A 0.3 m S2")).toBeUndefined();
    expect(spur("run A 0.4 m S2")).toBeCloseTo((24 * 0.00741 * 0.0121) / 0.01951 + 0.4 * 0.01951, 6);
  });

  it("is the one that reads the most", () => {
    expect(spur("run S1 3 m S2\nrun S1 4 m S3")).toBe(spur("run S1 4 m S3\nrun S1 3 m S2"));
    expect(spur("run S1 3 m S2\nrun S1 4 m S3")).toBeCloseTo((24 * 0.01951) / 4 + 4 * 0.01951, 6);
  });
});

describe("the runs of a way", () => {
  const runs = (lines: string) => {
    const found = studied(lines).runs;
    if (!found) return undefined;
    const { mainLength, closed, farthest, total, detached, twice } = found;
    const places = [...found.places.values()].map(
      ({ name, fromBoard, spur }) =>
        `${name.value} ${fromBoard}${spur ? `, ${spur.length} from ${spur.from}, ${spur.depth} deep` : ""}`,
    );
    return {
      places,
      mainLength,
      closed,
      farthest,
      total,
      detached: detached.length,
      twice: twice.map(({ value }) => value),
    };
  };

  it("of a radial are as long as they lie, the farthest place at their end", () => {
    expect(runs("run A 7 m S1 6 m S2")).toEqual({
      places: ["S1 7", "S2 13"],
      mainLength: 13,
      closed: false,
      farthest: 13,
      total: 13,
      detached: 0,
      twice: [],
    });
  });

  it("of a ring come home, so that no place is as far as they are long", () => {
    expect(runs("run A 7 m S1 6 m S2 8 m A")).toMatchObject({ closed: true, mainLength: 21, farthest: 13, total: 21 });
  });

  it("go on from a point as spurs, and from these as spurs of spurs", () => {
    expect(runs("run A 7 m S1 6 m A\nrun S1 4 m X1 3 m X2\nrun X1 2 m X3\nrun A 1 m X4")).toMatchObject({
      places: [
        "S1 7",
        "X1 11, 4 from S1, 1 deep",
        "X2 14, 7 from S1, 2 deep",
        "X3 13, 6 from S1, 2 deep",
        "X4 1, 1 from A, 1 deep",
      ],
      total: 23,
      farthest: 14,
    });
  });

  it("that begin nowhere, or come to a point a second time, are kept apart", () => {
    expect(runs("run A 7 m S1 6 m S2\nrun S9 4 m X1\nrun S1 5 m S2 2 m A")).toMatchObject({
      detached: 1,
      twice: ["S2", "A"],
      places: ["S1 7", "S2 13"],
    });
    expect(runs("length 20 m")).toBeUndefined();
  });
});
