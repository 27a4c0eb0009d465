/** Every line of working that is shown to anybody comes to what it says. */
import { globSync, readFileSync } from "node:fs";
import { basename } from "node:path";
import { describe, expect, it } from "vitest";
import { type Installation, installationsOf } from "../../server/model/installation.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { workingOf } from "../../server/reports/working/working.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { rules } from "../../server/rules/list.ts";
import { fileOfText } from "../../server/workspace/project.ts";
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
