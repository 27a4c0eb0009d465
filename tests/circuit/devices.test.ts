/**
 * Devices, RCDs, terminals and starts of a circuit. BS EN 60898: type B opens at once from 3 to 5 times In, C from 5 to 10, D
 * from 10 to 20; its breaking capacities are 1.5, 3, 4.5, 6, 10 kA and more. A service fuse of 100 A is what consumer units
 * are tested behind (BS EN 61439-3), 16 kA on condition. Multiples of a start are common practice.
 */
import { describe, expect, it } from "vitest";
import { additionalProtection, rcdsKnown } from "../../server/circuit/additional-protection.ts";
import { boardImpedance } from "../../server/circuit/board-impedance.ts";
import { breakingOf, conditionalAt, conditionalPossible, nextBreaking } from "../../server/circuit/breaking.ts";
import { armourSection, ratioOf } from "../../server/circuit/cpc.ts";
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

describe("additional protection", () => {
  const reasons = (lines: string, setting: Setting = {}) =>
    additionalProtection(studied(lines, setting)).map(({ reason }) => reason);
  const b = (rating: number, lines: string) => `device BS EN 60898 B${rating} 6 kA\n${lines}`;
  const home: Setting = { premises: "dwelling" };
  const seventeenth: Setting = { standard: "BS 7671:2008" };
  const sixteenth: Setting = { standard: "BS 7671:2001" };

  // 411.3.3: sockets up to 32 A, up to 20 A before 2018; mobile equipment outdoors up to 32 A; 411.3.4: lights of homes.
  it.each([
    [b(32, "serves sockets"), {}, ["sockets"]],
    [b(40, "serves sockets"), {}, []],
    [b(40, "serves sockets"), home, ["sockets"]],
    [b(20, "serves sockets"), seventeenth, ["sockets"]],
    [b(25, "serves sockets"), seventeenth, []],
    [b(32, "serves sockets\nplace skilled-only"), {}, []],
    [b(32, "serves sockets\nplace skilled-only"), home, ["sockets"]],
    [b(32, "serves outdoor-sockets"), {}, ["outdoors"]],
    [b(40, "serves outdoor-sockets"), {}, []],
    ["serves outdoor-sockets", {}, []],
    [b(32, "serves mobile\nplace outdoors"), {}, ["outdoors"]],
    [b(32, "serves mobile"), {}, []],
    [b(6, "serves lighting"), home, ["dwelling-lighting"]],
    [b(6, "serves lighting"), {}, []],
    [b(6, "serves lighting"), { ...home, ...seventeenth }, []],
    [b(6, "serves lighting\nplace public"), {}, ["public-lighting"]],
    [b(6, "serves lighting\nplace public"), seventeenth, []],
    [b(6, "serves heating\nplace bathroom"), {}, ["bathroom"]],
    [b(6, "serves heating\nplace bathroom"), sixteenth, []],
    [b(16, "serves floor-heating"), {}, ["floor-heating"]],
    [b(16, "serves floor-heating"), sixteenth, []],
    [b(32, "serves ev-charger"), {}, ["ev"]],
    [b(32, "serves ev-charger"), seventeenth, []],
    [b(16, "serves selv"), {}, []],
  ])("of %j, %j: %j", (lines, setting, wanted) => expect(reasons(lines, setting)).toEqual(wanted));

  // 522.6.202: 50 mm deep, or in earthed metal; 522.6.203: a wall with metal parts at any depth.
  const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";
  it.each([
    [`${twin}\nroute method 102 depth 49 mm`, {}, ["concealed"]],
    [`${twin}\nroute method 102 depth 50 mm`, {}, []],
    [`${twin}\nroute method 102 depth 49 mm`, sixteenth, []],
    [`${twin}\nroute method 102 depth 49 mm\nplace skilled-only`, {}, ["concealed"]],
    [`${twin}\nroute method 102 depth 49 mm\nplace skilled-only`, seventeenth, []],
    ["cable armoured 70 °C line 2.5 mm² cpc 2.5 mm² cores 3\nroute clipped method C depth 20 mm", {}, []],
    ["cable singles line 2.5 mm² cpc-by conduit\nroute conduit 20 mm method B depth 20 mm", {}, []],
    ["cable singles line 2.5 mm² cpc 1.5 mm²\nroute conduit 20 mm method B depth 20 mm", {}, ["concealed"]],
    [`${twin}\nroute wall method 102 depth 60 mm metal-frame`, {}, ["metal-frame"]],
    ["route method 102 depth 20 mm", {}, []],
  ])("of %j, %j: %j", (lines, setting, wanted) => expect(reasons(lines, setting)).toEqual(wanted));

  it("is not known to be missing where the way up or a name is not known", () => {
    const known = (lines: string, board: string) => rcdsKnown(studied(lines, { board }));
    const east = "rcd east BS EN 61008 63 A 30 mA type A";
    expect(known("", "fed-from supply")).toBe(true);
    expect(known("behind east", `fed-from supply\n${east}`)).toBe(true);
    expect(known("behind east", `fed-from supply\n${east}\n${east.replace("east", "west")}`)).toBe(true);
    expect(known("behind west", `fed-from supply\n${east}\n${east.replace("east", "west")}`)).toBe(true);
  });
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
