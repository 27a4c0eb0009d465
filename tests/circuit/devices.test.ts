/**
 * Devices, terminals, cables and starts of a circuit. BS EN 60898: type B opens at once from 3 to 5 times In, C from 5 to 10, D
 * from 10 to 20; its breaking capacities are 1.5, 3, 4.5, 6, 10 kA and more. A service fuse of 100 A is what consumer units
 * are tested behind (BS EN 61439-3), 16 kA on condition. Multiples of a start are common practice.
 */
import { describe, expect, it } from "vitest";
import { boardImpedance } from "../../server/circuit/board-impedance.ts";
import { breakingOf, conditionalAt, conditionalPossible, nextBreaking } from "../../server/circuit/breaking.ts";
import { countWords, hasResistance, isTabled } from "../../server/circuit/cable.ts";
import { armourSection, ratioOf } from "../../server/circuit/cpc.ts";
import { deviceName } from "../../server/circuit/describe.ts";
import { unstatedInput } from "../../server/circuit/motor-input.ts";
import { inrushCurrent, startingCurrent, tripsOnStart } from "../../server/circuit/motor-start.ts";
import { isTooHot, terminalHeat } from "../../server/circuit/terminals.ts";
import type { WayStudy } from "../../server/circuit/way.ts";
import { greatestWithstand } from "../../server/circuit/withstand.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const studied = (lines: string, setting: Setting = {}, kind = "radial"): WayStudy =>
  wayOf(nodeOf(installationOf(inSetting(`way 1 ${kind} "Circuit" {\n${lines}\n}`, setting).text), "A"), "1");

describe("breaking capacity", () => {
  it.each([
    ["device BS EN 60898 B16 10 kA", 10_000],
    ["device BS EN 60898 B16", undefined],
    ["device BS 3036 30 A", 1000],
    ["", undefined],
  ])("of %j: %s A", (lines, amperes) => expect(breakingOf(studied(lines))?.value).toBe(amperes));

  it.each([
    [5900, 6000],
    [6000, 6000],
    [6001, 10_000],
    [25_000, 25_000],
    [25_001, undefined],
  ])("that is made next for %i A is %s A", (fault, made) => expect(nextBreaking(fault)).toBe(made));

  const place = (cutout: string, board: string, phases = "") => {
    const { context } = studied("", { supply: `earthing TN-S\n${cutout}\n${phases}`, board });
    return [conditionalAt(context), conditionalPossible(context)?.value];
  };
  const marked = "fed-from supply\nconditional-rating 16 kA";
  it.each([
    ["cutout BS 88-3 100 A", marked, "", [16_000, undefined]],
    ["cutout BS 88-3 80 A", marked, "", [16_000, undefined]],
    ["cutout BS 88-3 125 A", marked, "", [undefined, undefined]],
    ["", marked, "", [16_000, undefined]],
    ["cutout BS 88-3 100 A", "fed-from supply", "", [undefined, 16_000]],
    ["cutout BS 88-3 100 A", "fed-from supply", "phases three", [undefined, undefined]],
    ["cutout BS 88-3 125 A", "fed-from supply", "", [undefined, undefined]],
    ["", "fed-from supply", "", [undefined, undefined]],
    ["cutout BS 88-3 100 A", "", "", [undefined, undefined]],
  ])("on condition: %j, %j, %j: %j", (cutout, board, phases, wanted) => {
    expect(place(cutout, board, phases)).toEqual(wanted);
  });
});

it.each([
  [{ standard: "BS EN 60898", curve: "B", rating: 32 }, "B32 BS EN 60898"],
  [{ standard: "BS 3871", curve: "2", rating: 15 }, "type 2 15 A BS 3871"],
  [{ standard: "BS 3036", rating: 30 }, "30 A BS 3036"],
  [{ standard: "BS 3036" }, "BS 3036"],
])("a device %j is named as it is spoken of: %s", (device, name) => expect(deviceName(device)).toBe(name));

describe("what busbar trunking withstands", () => {
  const of = (figures: string) => {
    const cable = `cable busbar-trunking line 122 mm² cpc-by casing carries 250 A r1 0.26 mΩ/m r1-hot 0.33 mΩ/m ${figures} by "Sheet 3"`;
    const found = greatestWithstand(studied(cable).cable);
    return found && [found.name, found.value];
  };
  it.each([
    ["Icw 10 kA", ["Icw", 10_000]],
    ["Icc 50 kA", ["Icc", 50_000]],
    ["Icw 10 kA Icc 50 kA", ["Icc", 50_000]],
    ["Icw 50 kA Icc 10 kA", ["Icw", 50_000]],
    ["Icw 10 kA Icc 10 kA", ["Icw", 10_000]],
    ["", undefined],
  ])("stated as %j is %j", (figures, wanted) => expect(of(figures)).toEqual(wanted));
});

describe("a start", () => {
  const of = (lines: string) => {
    const found = startingCurrent(studied(lines));
    return found && [found.value, found.stated];
  };
  it.each([
    ["serves motor\nIb 10 A", [60, false]],
    ["serves motor\nIb 10 A\nstarting star-delta", [25, false]],
    ["serves motor\nIb 10 A\nstarting drive", [15, false]],
    ["serves motor\nIb 10 A\nstarting direct 72 A", [72, true]],
    ["serves motor", undefined],
    ["serves motor lighting\nIb 10 A", undefined],
    ["serves lighting\nIb 10 A", undefined],
  ])("of %j takes %j", (lines, wanted) => expect(of(lines)).toEqual(wanted));

  it("of a transformer is known between two bounds", () => {
    const inrush = (lines: string) => {
      const found = inrushCurrent(studied(lines));
      return found && [found.least, found.value];
    };
    expect(inrush("serves transformer\nIb 10 A")).toEqual([100, 150]);
    expect(inrush("serves transformer lighting\nIb 10 A")).toBeUndefined();
    expect(inrush("serves lighting\nIb 10 A")).toBeUndefined();
    expect(inrush("serves transformer")).toBeUndefined();
    // C16 holds 150 A or may not: only what no release of the type holds is asked about.
    const bounds = inrushCurrent(studied("serves transformer\nIb 10 A"));
    expect(bounds && tripsOnStart(bounds, "C", 16)).toBeUndefined();
    expect(bounds && tripsOnStart(bounds, "B", 16)?.certain).toBe(true);
    expect(bounds && tripsOnStart(bounds, "B", 20)?.certain).toBe(false);
  });

  const start = (value: number, stated: boolean, least?: number) => ({
    value,
    unit: "A",
    steps: [],
    source: { ref: "", standing: "practice" } as const,
    stated,
    ...(least === undefined ? {} : { least }),
  });
  // C16: 80 to 160 A. What is stated may trip it from 80 A on; an estimate is asked about where no release holds.
  it.each([
    [start(80, true), undefined],
    [start(81, true), false],
    [start(160, true), false],
    [start(161, true), true],
    [start(81, false), undefined],
    [start(160, false), undefined],
    [start(161, false), true],
    [start(161, false, 100), false],
    [start(161, false, 160), false],
    [start(200, false, 161), true],
  ])("%o against C16, certain: %s", (current, certain) => {
    expect(tripsOnStart(current, "C", 16)?.certain).toBe(certain);
  });
});

// Below 370 W a motor's losses are nothing to ask about (common practice).
it.each([
  ["serves motor\nload 3 kW", 2],
  ["serves motor\nload 0.37 kW", 2],
  ["serves motor\nload 0.36 kW", undefined],
  ["serves motor\nload 3 kW\npower-factor 80 %", 1],
  ["serves motor\nload 3 kW\nstarting drive", 1],
  ["serves motor\nload 3 kW efficiency 85 %", 1],
  ["serves motor\nload 3 kW efficiency 85 %\npower-factor 80 %", undefined],
  ["serves motor\nload 3 kW efficiency 85 %\nload 2 kW", 2],
  ["serves motor\nload 6 A", undefined],
  ["serves motor\nload 3 kW\nIb 8 A", undefined],
  ["serves motor lighting\nload 3 kW", undefined],
  ["serves lighting\nload 3 kW", undefined],
])("of %j so much of a motor's plate is missing: %s", (lines, count) => {
  expect(unstatedInput(studied(lines))?.missing.length).toBe(count);
});

// 6 mm² clipped direct: 57 A with conductors at 90 °C would make terminals as hot; at 70 °C it carries 47 A (Tables 4D2A, 4E2A).
describe("terminals of a 90 °C cable", () => {
  const cable = "cable multicore 90 °C line 6 mm² cpc 6 mm² cores 3\nroute clipped method C";
  const hot = (lines: string, kind?: string) => {
    const heat = terminalHeat(studied(lines, {}, kind));
    return heat && [heat.current, heat.stated, isTooHot(heat)];
  };
  it.each([
    [`${cable}\nIb 46 A`, [46, true, false]],
    [`${cable}\nIb 47 A`, [47, true, true]],
    [`device BS EN 60898 B50 6 kA\n${cable}`, [50, false, true]],
    [`device BS EN 60898 B50 6 kA\n${cable}\nIb 40 A`, [40, true, false]],
    [`${cable}\nIb 47 A\nterminals 90 °C`, undefined],
    [`${cable}\nIb 47 A\nterminals 70 °C`, [47, true, true]],
    [`${cable.replace("90 °C ", "")}\nIb 47 A`, undefined],
    [`device BS 3036 45 A\n${cable}`, undefined],
    [cable, undefined],
  ])("of %j: %j", (lines, wanted) => expect(hot(lines)).toEqual(wanted));

  it("of a ring are at the ends of two cables", () => expect(hot(`${cable}\nIb 47 A`, "ring")).toBeUndefined());
});

describe("the loop at a board", () => {
  const of = (board: string) => {
    const found = boardImpedance(studied("", { supply: "earthing TN-S\nZe 0.30 Ω", board }).context);
    return found && [found.name, found.value];
  };
  it.each([
    ["fed-from supply", ["Ze", 0.3]],
    ["", undefined],
    ["fed-from supply\nZdb 0.32 Ω", ["Zdb", 0.32]],
    ["Zdb 0.32 Ω", ["Zdb", 0.32]],
    ["fed-from supply\nlive 2026-03-05 {\nZdb 0.33 Ω\n}\nZdb 0.32 Ω", ["Zdb", 0.33]],
    ["fed-from supply\nlive 2026-03-05 {\nIpf 1 kA\n}\nlive 2021-03-05 {\nZdb 0.33 Ω\n}", ["Zdb", 0.33]],
    ["fed-from supply\nZdb >20 Ω", undefined],
    ["fed-from supply\nZdb <0.02 Ω", ["Ze", 0.3]],
    ["fed-from supply\nearthing TT", undefined],
  ])("with %j is %j", (board, wanted) => expect(of(board)).toEqual(wanted));
});

describe("conductors of a cable", () => {
  const of = (line: string) => studied(`cable ${line}`).cable;
  it("in parallel are as many as are written, and protective ones no more than those", () => {
    const count = (more: string) => {
      const parallel = of(`singles line 70 mm² cpc 35 mm²${more}`)?.parallel;
      return parallel && [parallel.line, parallel.neutral, parallel.cpc];
    };
    expect(count("")).toEqual([1, 1, 1]);
    expect(count(" parallel 3")).toEqual([3, 3, 3]);
    expect(count(" parallel 3 cpcs 1")).toEqual([3, 3, 1]);
    expect(count(" parallel 2 cpcs 3")).toEqual([2, 2, 2]);
  });

  it("stand in the ratio of their sizes where as many lie in parallel", () => {
    const ratio = (line: string) => ratioOf(of(line))?.value;
    expect(ratio("flat-twin line 2.5 mm² cpc 1.5 mm²")).toBeCloseTo(12.1 / 7.41, 9);
    expect(ratio("singles line 70 mm² cpc 35 mm² parallel 2")).toBeCloseTo(0.524 / 0.268, 9);
    expect(ratio("singles line 70 mm² cpc 35 mm² parallel 2 cpcs 1")).toBeUndefined();
    expect(ratio("flat-twin line 2.5 mm²")).toBeUndefined();
    expect(ratioOf(undefined)).toBeUndefined();
  });

  it("are insulated for 70 °C unless 90 °C or more is written, and of copper", () => {
    const kind = (line: string) => {
      const cable = of(line);
      return cable && [cable.insulation, cable.material, cable.fireResisting, hasResistance(cable)];
    };
    expect(kind("multicore line 2.5 mm²")).toEqual([70, "copper", false, true]);
    expect(kind("multicore 70 °C line 2.5 mm²")).toEqual([70, "copper", false, true]);
    expect(kind("multicore 90 °C line 2.5 mm²")).toEqual([90, "copper", false, true]);
    expect(kind("multicore 90 °C line 16 mm² aluminium")).toEqual([90, "aluminium", false, true]);
    expect([1, 2, 3].map(countWords)).toEqual(["", "2 × ", "3 × "]);
  });

  it("are by their maker's figures where these are stated, each by its own", () => {
    const own = (figures: string) => of(`multicore line 16 mm² cpc 16 mm² ${figures}`)?.own;
    expect(own("")).toBeUndefined();
    expect(own('carries 90 A by "Sheet 3"')).toMatchObject({
      carries: { value: 90, source: { ref: "As stated, “Sheet 3”", standing: "quoted" } },
    });
    expect(own('r1 1.2 mΩ/m by "Sheet 3"')?.line?.value).toBeCloseTo(0.0012, 9);
    expect(own('r2 1.3 mΩ/m by "Sheet 3"')?.cpc?.value).toBeCloseTo(0.0013, 9);
    const bars = of(
      'busbar-trunking line 122 mm² cpc-by casing carries 250 A r1 0.26 mΩ/m r1-hot 0.33 mΩ/m Icw 10 kA by "Sheet 3"',
    );
    // A rated short-time current is for 1 s where no time stands beside it (BS EN 61439-1).
    expect(bars?.own?.withstands?.time).toBe(1);
    expect(bars && [hasResistance(bars), isTabled(bars)]).toEqual([true, false]);
  });

  // 22 mm² of steel round two cores of 6 mm² (BS 5467).
  it("have an armour beside them where they are armoured and it is the protective conductor", () => {
    const section = (line: string) => {
      const cable = of(line);
      return cable && armourSection(cable)?.value;
    };
    expect(section("armoured 90 °C line 6 mm² cpc-by armour cores 2")).toBe(22);
    expect(section("multicore line 6 mm² cpc-by armour cores 3")).toBeUndefined();
    expect(section("armoured 90 °C line 6 mm² cpc 6 mm² cores 3")).toBeUndefined();
    expect(section("armoured 90 °C line 6 mm² cpc-by armour")).toBeUndefined();
  });
});
