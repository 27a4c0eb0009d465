/** What a circuit counts as in the demand of its board, by what it serves, and what is said of the sum. */
import { describe, expect, it } from "vitest";
import { ownLoads } from "../../server/boards/circuit-load.ts";
import { demandOf } from "../../server/boards/demand.ts";
import { demandNotes } from "../../server/boards/demand-words.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { installationOf, nodeOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const board = (ways: readonly string[], setting: Setting = {}) => {
  const all = ways.map((lines, at) => `way ${at + 1} ${lines}`).join("\n");
  return nodeOf(installationOf(inSetting(all, { premises: "dwelling", ...setting }).text), "A");
};
const way = (lines: string, kind = "radial") => `${kind} "Circuit" {\n${lines}\n}`;
const three: Setting = { supply: "earthing TN-S\nphases three", board: "fed-from supply\nphases three" };

describe("a circuit counts as", () => {
  const of = (lines: string, kind?: string) => {
    const [load] = ownLoads(board([way(lines, kind)])).loads;
    return load && [load.purpose, load.current, load.basis, load.socket];
  };
  const b32 = "device BS EN 60898 B32 6 kA";

  it.each([
    // 11.5 kW at 230 V are 50 A.
    ["serves cooker\nload 11.5 kW", "radial", ["cookers", 50, "loads", false]],
    ["serves cooker sockets\nload 11.5 kW", "radial", ["cookers", 50, "loads", true]],
    ["serves cooker\nload 11.5 kW\nIb 30 A", "radial", ["cookers", 50, "loads", false]],
    ["serves cooker\nIb 30 A", "radial", ["cookers", 30, "stated", false]],
    ["serves cooker lighting\nIb 30 A", "radial", [undefined, 30, "stated", false]],
    ["serves cooker sockets lighting\nIb 30 A", "radial", [undefined, 30, "stated", false]],
    [b32, "ring", ["standard-circuits", 32, "assumed", false]],
    [`${b32}\nserves sockets`, "ring", ["standard-circuits", 32, "assumed", false]],
    [`${b32}\nserves sockets lighting`, "ring", [undefined, 32, "assumed", false]],
    [`${b32}\nserves sockets`, "radial", ["sockets", 32, "assumed", false]],
    [`${b32}\nserves lighting`, "radial", undefined],
    [b32, "radial", undefined],
    ["serves sockets", "radial", undefined],
    ["serves lighting\nload 2.3 kW", "radial", ["lighting", 10, "loads", false]],
  ] as const)("%j, a %s: %j", (lines, kind, wanted) => expect(of(lines, kind)).toEqual(wanted));
});

describe("a demand in words", () => {
  const said = (ways: readonly string[], setting?: Setting) => {
    const demand = demandOf(board(ways, setting));
    return demand && demandNotes(demand);
  };
  const heater = (Ib: number, phase = "") => way(`serves water-heater\nIb ${Ib} A${phase && `\nphase ${phase}`}`);
  const sockets = way("device BS EN 60898 B32 6 kA\nserves sockets");
  const unknown = way("device BS EN 60898 B6 6 kA\nserves lighting");
  const shop: Setting = { premises: "industrial" };

  it.each([
    [[heater(13)], {}, "13 A with diversity"],
    [[heater(13)], shop, "13 A with diversity"],
    [[heater(13), heater(10)], shop, "23 A with every circuit in full"],
    [[heater(13), sockets], shop, "45 A with every circuit in full (one circuit taken at the rating of the device)"],
    [
      [heater(13), sockets, sockets],
      shop,
      "77 A with every circuit in full (2 circuits taken at the rating of the device)",
    ],
    [
      [heater(13), heater(10), unknown],
      shop,
      "at least 23 A with every circuit in full (one circuit not counted, load not given)",
    ],
    [[heater(13, "L2"), heater(10, "L1")], { ...three, ...shop }, "13 A on L2 with every circuit in full"],
    // 12 A at 50 % are 2 A on each line.
    [
      [heater(13, "L2"), heater(10, "L1"), way("serves water-heater\nIb 12 A\ndiversity 50 %")],
      { ...three, ...shop },
      "15 A on L2 with every circuit in full (one circuit spread evenly over the lines)",
    ],
    [[heater(10, "L3"), heater(10, "L2")], { ...three, ...shop }, "10 A on L2 with every circuit in full"],
    [
      [heater(13, "L2"), heater(10, "L1"), heater(9)],
      { ...three, ...shop },
      "16 A on L2 with every circuit in full (one circuit spread evenly over the lines)",
    ],
  ] as const)("%# %j", (ways, setting, wanted) => expect(said(ways, setting)).toBe(wanted));
});
