/** Figures and words of calculations, where the sum that rests on them would hide a slip. */
import { describe, expect, it } from "vitest";
import { armourOperatingFactor } from "../../server/calc/armour.ts";
import { capacityBound } from "../../server/calc/capacity-bound.ts";
import { thermalInsulationFactor } from "../../server/calc/capacity-factors.ts";
import { trunkingSum } from "../../server/calc/containment.ts";
import { diversified } from "../../server/calc/diversity.ts";
import { calculatedDrop } from "../../server/calc/drop-figures.ts";
import { prospective } from "../../server/calc/fault-current.ts";
import { figure } from "../../server/calc/figure.ts";
import { marginOf } from "../../server/calc/margin.ts";
import { nextSizeUp } from "../../server/calc/minimum-size.ts";
import { pack } from "../../server/calc/packing.ts";
import { reactancePerMetre } from "../../server/calc/reactance.ts";
import { kiloamps, round, truncate, working } from "../../server/calc/result.ts";

describe("a margin of what is only bounded", () => {
  it.each([
    ["least", 0.9, ">", undefined],
    ["least", 1.2, ">", "1.2 times it"],
    ["least", 1.2, "<", undefined],
    ["least", 0.9, "<", "less than 90 % of it"],
    ["least", 1, "<", "below it"],
    ["most", 0.9, ">", undefined],
    ["most", 1, ">", "over it"],
    ["most", 1.2, "<", undefined],
    ["most", 0.9, "<", "more than 10 % left"],
  ] as const)("at %s the limit: %d with %s", (sense, value, sign, text) => {
    expect(marginOf(sense, value, 1, sign)?.text).toBe(text);
  });
});

it.each([
  [0.4, "s", "400 ms"],
  [1, "s", "1 s"],
  [1.5, "s", "1.5 s"],
  [0.03, "A", "30 mA"],
  [1, "A", "1 A"],
  [1000, "A", "1 kA"],
  [1000, "W", "1 kW"],
])("%d %s is written %s", (value, unit, text) => {
  expect(figure(value, unit)).toBe(text);
});

it("the next size is the size itself, and none below where one begins", () => {
  expect([nextSizeUp(2.5), nextSizeUp(2.5, 2.5), nextSizeUp(0.3, 1), nextSizeUp(2.6, 1)]).toEqual([2.5, 2.5, 1, 4]);
});

// 523.9 as it is quoted: 0.88 to 50 mm, 0.50 from 500 mm on.
it.each([
  [50, 0.88, "up to 50 mm"],
  [51, 0.78, "up to 100 mm"],
  [900, 0.5, "over 500 mm"],
])("cable in %i mm of insulation", (length, value, words) => {
  const found = thermalInsulationFactor(length);
  if ("missing" in found) throw new Error(found.missing);
  expect(found.value).toBe(value);
  expect(JSON.stringify(found.steps)).toContain(words);
});

it("a drop that is calculated is twice the impedance of a conductor, and √3 times between lines", () => {
  const drop = (loaded: 2 | 3) =>
    calculatedDrop({ csa: 16, material: "copper", insulation: 70, loaded } as Parameters<typeof calculatedDrop>[0])
      ?.value ?? 0;
  // 1.15 mΩ/m at 20 °C (BS EN 60228), 1.20 times it at 70 °C, 0.08 mΩ/m of reactance.
  expect(drop(2)).toBeCloseTo(2 * Math.hypot(0.00115 * 1.2, 0.00008), 6);
  expect(drop(3) / drop(2)).toBeCloseTo(Math.sqrt(3) / 2, 9);
});

it("a bound that comes down from 90 °C loses what the smaller rise and the colder copper leave", () => {
  const question = { construction: "armoured", insulation: 70, method: "C", loaded: 3, csa: 16 } as const;
  // Table 4E4A, method C, three loaded cores of 16 mm²: 94 A. Rises of 40 K and 60 K, resistance as 300 to 320.
  expect(capacityBound(question)?.value).toBeCloseTo(94.5 * Math.sqrt((40 / 60) * (320 / 300)), 6);
});

it("a demand by a share of the whole shows the share and the whole", () => {
  const { value, steps } = diversified({ purpose: "lighting", column: "household", currents: [6, 4] });
  expect(value).toBeCloseTo(6.6, 9);
  expect(JSON.stringify(steps)).toContain("66 % × 10 A");
});

// 2.875 and 0.145 are stored a hair below themselves: as decimals they are halves, and tables round a half up.
it("halves are rounded up as they are written, and cut off where they are cut off", () => {
  expect([round(2.875, 2), round(0.145, 2), round(1.0049, 2)]).toEqual([2.88, 0.15, 1]);
  expect([truncate(0.29, 2), truncate(0.299, 2)]).toEqual([0.29, 0.29]);
});

it("a current is in kA from 100 A on, and loses no figure below", () => {
  expect([kiloamps(6_000), kiloamps(920), kiloamps(46), kiloamps(100)]).toEqual([
    "6 kA",
    "0.92 kA",
    "0.046 kA",
    "0.1 kA",
  ]);
  expect([prospective(99.5), prospective(100)]).toEqual(["99.5 A", "0.1 kA"]);
});

it.each([
  [1.09, "just on it"],
  [1.1, "1.1 times it"],
  [2.5, "2.5 times it"],
  [99, "99 times it"],
  [100, "far above it"],
])("what is %d times the least is %s, whatever the least is", (times, text) => {
  expect(marginOf("least", times, 1)?.text).toBe(text);
  expect(marginOf("least", times * 8, 8)?.text).toBe(text);
});

// Steel from 20 °C to 60 °C is 1 + 40 / (beta + 20), with beta of 202 °C for steel by IEC 60949.
it("armour is calculated in the figures it is shown with", () => {
  const said = working(armourOperatingFactor(70).steps);
  expect(said).toContain("1 + (60 − 20) / (202 + 20) = 1.18");
  expect(said).toMatch(/1\.18 × 1\.1 = 1\.298$/);
});

it("spare room is said where some is kept, and only there", () => {
  const cables = [{ count: 4, csa: 2.5 }];
  const numbers = (spare?: number) =>
    trunkingSum(cables, spare)
      ?.steps.map((one) => one.numbers)
      .join();
  expect(numbers()).not.toContain("spare");
  expect(numbers(0.005)).toContain("0.5 % spare");
  expect(numbers(0.45)).toContain("45 % spare");
});

it("a cable that fits exactly fits", () => {
  // Two of 10 mm beside each other in 20 mm by 10 mm, and no third.
  const trunking = { shape: "box", width: 20, depth: 10 } as const;
  expect(pack(trunking, [5, 5]).placed).toHaveLength(2);
  expect(pack(trunking, [5, 5, 5]).placed.length).toBeLessThan(3);
});

it("reactance of cores with armour is as tabulated, of cores without by what lies near it", () => {
  const standing = (lying: "armoured" | "in-cable") => reactancePerMetre(95, lying)?.source;
  expect(reactancePerMetre(95, "armoured")?.value).toBe(reactancePerMetre(95, "in-cable")?.value);
  expect(standing("armoured")?.remembered).toBeUndefined();
  expect(standing("in-cable")?.remembered?.map(({ share }) => share)).toEqual([0.1]);
});
