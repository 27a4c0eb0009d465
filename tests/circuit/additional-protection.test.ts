/** Which circuits need an RCD, how fine, and by which clause and edition: each with what is just without. */
import { describe, expect, it } from "vitest";
import { additionalProtection, fineRcds, meets, rcdsKnown } from "../../server/circuit/additional-protection.ts";
import type { WayStudy } from "../../server/circuit/way.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const studied = (lines: string, setting: Setting = {}, kind = "radial"): WayStudy =>
  wayOf(nodeOf(installationOf(inSetting(`way 1 ${kind} "Circuit" {\n${lines}\n}`, setting).text), "A"), "1");

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
    // Of two places the one that asks for the finer RCD speaks first: 30 mA before 300 mA.
    [b(16, "serves appliance\nplace agricultural bathroom"), {}, ["bathroom", "agricultural"]],
    [b(16, "serves appliance\nplace agricultural exhibition"), {}, ["exhibition", "agricultural"]],
    [b(16, "serves appliance\nplace fire-risk sauna"), {}, ["sauna", "fire-risk"]],
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

describe("an RCD that a place asks for", () => {
  const needs = (lines: string, setting: Setting = {}, kind = "radial") =>
    additionalProtection(studied(lines, setting, kind)).map(({ reason, limit }) => [reason, limit.value]);

  // 702.410.3.4: 30 mA; 422.3.9: 300 mA; 708.553: of a park home though a board is behind it.
  it.each([
    ["place pool", [["pool", 0.03]]],
    ["place fire-risk", [["fire-risk", 0.3]]],
    [
      "place fire-risk pool",
      [
        ["pool", 0.03],
        ["fire-risk", 0.3],
      ],
    ],
    [
      "place pool fire-risk",
      [
        ["pool", 0.03],
        ["fire-risk", 0.3],
      ],
    ],
    ["serves selv\nplace pool", []],
    ["serves park-home", [["park-home", 0.03]]],
    ["protective-measure separation\nplace pool", []],
  ])("of %j: %j", (lines, wanted) => expect(needs(lines)).toEqual(wanted));

  it("is asked of the feeder to a park home and of no other, of no spare, and of the 16th Edition's no park home", () => {
    const feeder = (uses: string, standard?: string) => {
      const board = `way 1 feeder "F" {\nfeeds B\nserves ${uses}\n}\n}\nboard B "Home" {\nfed-from A`;
      const text = inSetting(board, standard === undefined ? {} : { standard }).text;
      return additionalProtection(wayOf(nodeOf(installationOf(text), "A"), "1")).map(({ reason }) => reason);
    };
    expect(feeder("park-home")).toEqual(["park-home"]);
    expect(feeder("heating")).toEqual([]);
    expect(needs("serves park-home", { standard: "BS 7671:2001" })).toEqual([]);
  });

  it("rests on the clause of its reason", () => {
    const refs = (lines: string, setting?: Setting) =>
      additionalProtection(studied(`device BS EN 60898 B16 6 kA\n${lines}`, setting)).map(({ source }) => source.ref);
    expect(refs("serves floor-heating")[0]).toContain("753.");
    expect(refs("serves ev-charger")[0]).toContain("722.");
    expect(refs("serves sockets")[0]).toContain("411.3.3");
    expect(refs("serves lighting", { premises: "dwelling" })[0]).toContain("411.3.4");
  });

  it("is met by one as fine or finer", () => {
    const limit = { value: 0.03 };
    expect([0.01, 0.03, 0.1].map((sensitivity) => meets({ sensitivity }, limit))).toEqual([true, true, false]);
    const fine = (lines: string) => fineRcds(studied(lines)).map(({ sensitivity }) => sensitivity);
    expect(fine("device BS EN 61009 B16 6 kA 30 mA type A")).toEqual([0.03]);
    expect(fine("device BS EN 61009 B16 6 kA 100 mA type A")).toEqual([]);
  });

  const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";
  it.each([
    [`${twin}\nroute clipped method C`, {}, []],
    // In the ground a depth says something else.
    [`${twin}\nroute buried depth 20 mm`, {}, []],
    [`${twin}\nroute clipped method C\nroute method 102 depth 20 mm`, {}, ["concealed"]],
    [`${twin}\nroute wall method 102 depth 60 mm metal-frame`, { standard: "BS 7671:2001" }, []],
    [`${twin}\nroute wall method 102 depth 60 mm metal-frame\nplace skilled-only`, {}, ["metal-frame"]],
    [`${twin}\nroute wall method 102 depth 60 mm metal-frame\nplace skilled-only`, { standard: "BS 7671:2008" }, []],
  ])("of %j, %j: %j", (lines, setting, wanted) => {
    expect(needs(lines, setting).map(([reason]) => reason)).toEqual(wanted);
  });
});
