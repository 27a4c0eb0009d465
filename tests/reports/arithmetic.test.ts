/** Every line of working that is shown to anybody comes to what it says. */
import { globSync, readFileSync } from "node:fs";
import { basename } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Installation, installationsOf } from "../../server/model/installation.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { workingOf } from "../../server/reports/working/working.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { rules } from "../../server/rules/list.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { disagreement, isCalculated } from "../helpers/arithmetic.ts";
import { inSetting, unmark } from "../helpers/sample.ts";
import { hazards } from "../rules/hazards.table.ts";

const inWorking = (installation: Installation): string[] =>
  reportText(workingOf(installation))
    .split("\n")
    .map((line) => line.trim());
const inFindings = (installation: Installation, which = rules): string[] =>
  checkInstallation(installation, which).findings.flatMap(({ working }) => working?.split("\n") ?? []);

const wrongIn = (lines: readonly string[]): string[] => lines.flatMap((line) => (disagreement(line) ? [line] : []));

describe("arithmetic as it is shown", () => {
  it.each([
    ["230 V × 0.95 / 160 A = 1.37 Ω", undefined],
    ["230 V × 0.95 / 160 A = 1.38 Ω", "230 V × 0.95 / 160 A = 1.38 Ω"],
    ["S = √(I² × t) / k = √((345.21 A)² × 1.989 s) / 115 = 4.23 mm²", undefined],
    ["S = √(I² × t) / k = √((345.21 A)² × 1.989 s) / 115 = 4.33 mm²", "√((345.21 A)² × 1.989 s) / 115 = 4.33 mm²"],
    ["drop = 11 mV/A/m × 24 A × 50 m = 13.2 V (BS 7671, Table 4D2B)", undefined],
    ["drop = 11 mV/A/m × 24 A × 50 m = 15.2 V (BS 7671, Table 4D2B)", "11 mV/A/m × 24 A × 50 m = 15.2 V"],
    ["It = 33 A (BS 7671:2018+A2:2022, Table 4D4A)", undefined],
  ])("%s", (line, wrong) => expect(disagreement(line)).toBe(wrong));

  const examples = globSync("examples/**/*.ways").toSorted();
  it.each(examples.map((path) => [basename(path), path] as const))("in the working of %s", (_, path) => {
    const installations = installationsOf([fileOfText("sample.ways", readFileSync(path, "utf8"))]);
    expect(wrongIn(installations.flatMap((one) => [...inWorking(one), ...inFindings(one)]))).toEqual([]);
  });

  const installed = (text: string, setting?: Setting) =>
    installationsOf([fileOfText("sample.ways", inSetting(unmark(text).text, setting).text)]);

  it("in the findings of every sample, and the working of every circuit made right", () => {
    const findings = rules.flatMap((rule) =>
      rule.examples.flatMap(({ bad, setting }) => installed(bad, setting).flatMap((one) => inFindings(one, [rule]))),
    );
    const workings = hazards.flatMap(({ right, rightSetting }) => installed(right, rightSetting).flatMap(inWorking));
    const lines = [...new Set([...findings, ...workings])];
    expect(lines.filter(isCalculated).length).toBeGreaterThan(300);
    expect(wrongIn(lines)).toEqual([]);
  });
});

/** A schedule of one circuit, with figures that nobody would choose. */
const anySchedule = fc
  .record({
    earthing: fc.constantFrom("TN-S", "TN-C-S", "TT"),
    three: fc.boolean(),
    Ze: fc.integer({ min: 5, max: 80 }),
    ring: fc.boolean(),
    device: fc.constantFrom("B16", "B32", "C20", "C40", "D10", "B6"),
    size: fc.constantFrom(["1.5", "1.0"], ["2.5", "1.5"], ["4", "1.5"], ["10", "4"]),
    armoured: fc.boolean(),
    length: fc.integer({ min: 10, max: 999 }),
    load: fc.integer({ min: 100, max: 9999 }),
    factor: fc.integer({ min: 60, max: 100 }),
    read: fc.integer({ min: 3, max: 250 }),
    celsius: fc.integer({ min: 1, max: 29 }),
  })
  .map(({ earthing, three, Ze, ring, device, size: [line, cpc], armoured, length, load, factor, read, celsius }) => {
    const cable = armoured
      ? `armoured 90 °C line ${line} mm² cpc-by armour cores ${three ? 4 : 3}`
      : `flat-twin line ${line} mm² cpc ${cpc} mm²`;
    return `wayfile 1
installation "Any" {
  standard BS 7671:2018+A2:2022
  stage tested
  supply {
    earthing ${earthing}
    phases ${three ? "three" : "single"}
    Ze ${Ze / 100} Ω
    Ipf 1.${Ze} kA
  }
  board A "Main" {
    fed-from supply
    way 1 feeder "Annexe" {
      device BS 88-2 63 A 80 kA gG
      cable armoured 90 °C line 16 mm² cpc-by armour cores ${three ? 4 : 3}
      route clipped method C
      length ${length / 7} m
      feeds B
    }
  }
  board B "Annexe" {
    fed-from A
    way 1 ${ring && !armoured ? "ring" : "radial"} "Load" {
      device BS EN 60898 ${device} 6 kA
      cable ${cable}
      route clipped method C ambient ${25 + (load % 20)} °C
      length ${length / 10} m
      power-factor ${factor} %
      load ${load} W
      dead 2026-03-04 {
        R1+R2 ${read / 100} Ω
      }
      live 2026-03-05 {
        temperature ${celsius} °C
        Zs ${(read + Ze) / 100} Ω
      }
    }
  }
}`;
  });

describe("arithmetic of any schedule", () => {
  it("comes to what it says by the figures that are shown", () => {
    let seen = 0;
    fc.assert(
      fc.property(anySchedule, (text) => {
        const lines = installationsOf([fileOfText("any.ways", text)]).flatMap((one) => [
          ...inWorking(one),
          ...inFindings(one),
          ...checkInstallation(one, rules).findings.map(({ message }) => message),
        ]);
        seen += lines.filter(isCalculated).length;
        expect(wrongIn(lines)).toEqual([]);
      }),
      { numRuns: 40, seed: 7 },
    );
    expect(seen).toBeGreaterThan(300);
  });
});
