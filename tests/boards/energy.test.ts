/**
 * What a breaker lets through, and in which conductor: the thinner of line and protective conductor stands k² S², with k
 * 115 of copper at 70 °C and 143 at 90 °C (BS 7671, Table 43.1).
 */
import { describe, expect, it } from "vitest";
import { byBreaking, byLetThrough, heatBehindFuse, letThroughAt } from "../../server/boards/energy.ts";
import { leastFaults } from "../../server/boards/fault-levels.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const nodeWith = (...ways: readonly string[]) => {
  const all = ways.map((lines, at) => `way ${at + 1} ${lines === "" ? "spare" : `radial "Bench" {\n${lines}\n}`}`);
  return nodeOf(installationOf(inSetting(all.join("\n")).text), "A");
};
const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";
const breaker = "device BS EN 60898 B16 6 kA";

describe("what a breaker lets through", () => {
  const of = (device: string, cable: string) => {
    const found = letThroughAt(wayOf(nodeWith(`${device}\n${cable}`), "1"), 3000);
    return found && [found.conductor, found.csa, Math.round(found.stands.value)];
  };
  it.each([
    [breaker, twin, ["cpc", 1.5, 29756]],
    [breaker, "cable singles line 2.5 mm² cpc 2.5 mm²", ["line", 2.5, 82656]],
    [breaker, "cable singles 90 °C line 2.5 mm² cpc 2.5 mm²", ["line", 2.5, 127806]],
    [breaker, "cable flat-twin line 2.5 mm²", ["line", 2.5, 82656]],
    // Armour lies beside the core: what goes through which is another matter.
    [breaker, "cable armoured 70 °C line 2.5 mm² cpc 1.5 mm² cpc-by armour cores 3", ["line", 2.5, 82656]],
    ["device BS EN 60898 C16 6 kA", twin, ["cpc", 1.5, 29756]],
    ["device BS EN 61009 C16 6 kA 30 mA type A", twin, ["cpc", 1.5, 29756]],
    // Neither for type D nor for a fuse is a class kept; aluminium, mineral cable and a cable unknown have no k here.
    ["device BS EN 60898 D16 6 kA", twin, undefined],
    ["device BS 88-2 16 A 80 kA gG", twin, undefined],
    ["", twin, undefined],
    [breaker, "", undefined],
    [breaker, "cable singles aluminium line 16 mm² cpc 16 mm²", undefined],
    [breaker, "cable mineral line 2.5 mm² cpc 2.5 mm²", undefined],
  ] as const)("%s before %s", (device, cable, wanted) => expect(of(device, cable)).toEqual(wanted));
});

describe("the ways of a board", () => {
  it("by what their devices break, the least first, without spares and what is not known", () => {
    const node = nodeWith("device BS EN 60898 B16 10 kA", "", "device BS EN 60898 B16 6 kA", "Ib 5 A");
    expect(byBreaking(node).map(({ way, current }) => [way.id, current])).toEqual([
      ["3", 6000],
      ["1", 10_000],
    ]);
  });

  it("by the current from which the let-through is too much, to a hundredth of 10 kA", () => {
    const node = nodeWith(
      `${breaker}\n${twin}`,
      "",
      "device BS EN 60898 B32 6 kA\ncable flat-twin line 1.5 mm² cpc 1.0 mm²",
      breaker,
    );
    const found = byLetThrough(node);
    expect(found.map(({ way }) => way.id)).toEqual(["3", "1"]);
    for (const { way, current } of found) {
      const at = (fault: number) => {
        const through = letThroughAt(wayOf(node, way.id), fault);
        return (through?.energy.value ?? Number.NaN) > (through?.stands.value ?? Number.NaN);
      };
      expect([at(current), at(current + 100)]).toEqual([false, true]);
    }
  });
});

// A fuse that protects the cable against overload covers its faults too (435.1); of breakers another check speaks.
it.each([
  ["device BS 88-2 63 A 80 kA gG", "route clipped method C\nIb 20 A", true],
  ["device BS 88-2 16 A 80 kA gG", "route clipped method C\nIb 10 A", false],
  ["device BS EN 60898 B63 6 kA", "route clipped method C\nIb 20 A", false],
  ["", "route clipped method C\nIb 20 A", false],
])("heat behind %s, %j, is looked at: %s", (device, lines, looked) => {
  const node = nodeWith(`${device}\n${twin}\nlength 20 m\n${lines}`);
  expect(heatBehindFuse(node, wayOf(node, "1")) !== undefined).toBe(looked);
});

it("the fault of one cable is that at its end, and no place in one of several", () => {
  const said = (cable: string) => {
    const node = nodeWith(`${breaker}\ncable ${cable}\nroute clipped method C\nlength 20 m\nserves heating\nIb 10 A`);
    const { earth } = leastFaults(node, wayOf(node, "1"));
    return earth?.steps.map(({ formula }) => formula).join("; ");
  };
  expect(said("singles line 70 mm² cpc 70 mm²")).not.toContain("in parallel");
  expect(said("singles line 70 mm² cpc 70 mm²")).toContain("resistance of way 1");
});
