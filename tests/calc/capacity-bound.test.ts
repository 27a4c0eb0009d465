import { describe, expect, it, test } from "vitest";
import { type CapacityQuestion, tabulatedCapacity } from "../../server/calc/capacity.ts";
import { capacityBound } from "../../server/calc/capacity-bound.ts";
import { capacity4D2A, capacity4D4A, capacity4D5 } from "../../server/tables/capacity-70.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const kinds = [
  ["flat-twin", ["A", "B", "C", "100", "101", "102", "103"], [2], capacity4D5],
  ["multicore", ["A", "B", "C", "E"], [2, 3], capacity4D2A],
  ["armoured", ["C", "D", "E"], [2, 3], capacity4D4A],
] as const;

const questions = kinds.flatMap(([construction, methods, loads, { rows }]) =>
  rows.flatMap(({ facts: { csa } }) =>
    methods.flatMap((method) =>
      loads.map((loaded): CapacityQuestion => ({ construction, insulation: 70, method, loaded, csa })),
    ),
  ),
);

test("what a cable carries at most is never less than what its own table remembers", () => {
  const bounded = questions.flatMap((question) => {
    const own = tabulatedCapacity(question);
    const bound = capacityBound(question);
    return own?.source.standing === "memory" && bound ? [{ question, own, bound }] : [];
  });
  expect(bounded.length).toBeGreaterThan(100);
  for (const { question, own, bound } of bounded)
    expect(bound.value, JSON.stringify(question)).toBeGreaterThanOrEqual(own.value);
  for (const { bound } of bounded) expect(bound.source.standing).not.toBe("memory");
});

describe("a device that no cable of the kind could bear", () => {
  const severity = (device: string, cable: string, route = "clipped method C") => {
    const way = `way 1 radial "Oven" {\ndevice BS EN 60898 ${device} 6 kA\ncable ${cable}\nroute ${route}\nserves cooker\n}`;
    const found = findingsOf(inSetting(way).text).filter(({ check }) => check === "design/device-over-capacity");
    return found.map((finding) => finding.severity);
  };

  // BS 7671:2018 as printed by suppliers: Table 4D1A, method C: 27 A for 2.5 mm², 37 A for 4 mm². Table 4E4A, method C:
  // 62 A for 6 mm² at 90 °C, so 52.7 A at most at 70 °C; method D 53 A. A cable maker's copy of Table 4D4A, method C: 49 A.
  // From memory are 37 A of Table 4D5 and, in the ground, 46 A of Table 4D4A.
  it.each([
    ["B32", "flat-twin line 2.5 mm² cpc 1.5 mm²", "error"],
    ["B40", "flat-twin line 4 mm² cpc 1.5 mm²", "error"],
    ["C63", "armoured line 6 mm² cpc 6 mm²", "error"],
    ["C50", "armoured line 6 mm² cpc 6 mm²", "error"],
    ["C50", "armoured line 6 mm² cpc 6 mm²", "warning", "buried method D"],
    // Table 4E2A, method E: 36 A at 90 °C, so 30.8 A at most at 70 °C, where 30 A of Table 4D2A is from memory.
    ["B32", "multicore line 2.5 mm² cpc 2.5 mm² cores 3", "error", "tray method E"],
  ])("%s on %s", (device, cable, expected, route?: string) =>
    expect(severity(device, cable, route)).toEqual([expected]),
  );

  it("counts the factors of the route", () => {
    const cable = "flat-twin line 6 mm² cpc 2.5 mm²";
    expect(severity("B40", cable)).toEqual([]);
    // 47 A × 0.70 for three circuits together (Table 4C1) is 32.9 A.
    expect(severity("B40", cable, "clipped method C grouped 3")).toEqual(["error"]);
  });
});
