/** Each hazard is found by its own check, on its line, as gravely as it is; the same circuit made right raises nothing. */
import { describe, expect, it } from "vitest";
import { pageOf } from "../../server/rules/frame/catalogue.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { asGraveAs } from "../helpers/dangers.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";
import { hazards, notJudged } from "./hazards.table.ts";

const found = (lines: string, setting: Setting) => {
  const { text } = inSetting(lines, setting);
  const written = text.split("\n");
  return findingsOf(text).map(({ check, line, severity }) => ({
    check,
    severity,
    line: written[line - 1]?.trim() ?? "",
  }));
};

describe("a hazard", () => {
  it.each(hazards.map((hazard) => [hazard.name, hazard] as const))("%s", (_, hazard) => {
    const { check, least, at, fault, setting } = hazard;
    const own = found(fault, setting).filter((finding) => finding.check === check);
    expect(own.map(({ line }) => line)).toContain(at);
    expect(own.filter(({ line, severity }) => line === at && !asGraveAs(severity as typeof least, least))).toEqual([]);
  });

  it("has a name and a check of its own, and a reason where none judges it", () => {
    const names = [...hazards.map(({ name }) => name), ...Object.keys(notJudged)];
    expect(new Set(names).size).toBe(names.length);
    expect(hazards.filter(({ check }) => !pageOf(check))).toEqual([]);
    expect(Object.values(notJudged).filter((reason) => reason.length < 40)).toEqual([]);
  });
});

describe("the same made right", () => {
  it.each(hazards.map((hazard) => [hazard.name, hazard] as const))("%s", (_, { check, least, right, rightSetting }) => {
    const grave = ({ severity }: { severity: string }) => asGraveAs(severity as typeof least, least);
    const left = found(right, rightSetting).filter(
      (finding) => finding.severity !== "information" || (finding.check === check && grave(finding)),
    );
    expect(left).toEqual([]);
  });
});
