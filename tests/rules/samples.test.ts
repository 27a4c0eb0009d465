/** What holds of every finding in every check's samples, whatever the check. */
import { describe, expect, it } from "vitest";
import { rules } from "../../server/rules/list.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { fixed, foundBy } from "../helpers/fixing.ts";
import { foundIn, samplesOf } from "./recorded/record.ts";

const problemsIn = (text: string): string[] =>
  [...fileOfText("sample.ways", text).model.problems.values()].flat().map(({ message }) => message);

describe.each(rules.map((rule) => [rule.id, rule] as const))("%s", (id, rule) => {
  // What is below what is expected of it is short of a least, and has nothing left of a most.
  it("warns of nothing that passes its limit", () => {
    const passing = samplesOf(rule).flatMap(({ text }) =>
      (foundIn(rule, text) ?? []).filter(({ severity, verdict }) => severity !== "information" && verdict === "passes"),
    );
    expect(passing.map(({ check, message }) => `${check}: ${message}`)).toEqual([]);
  });

  it("offers fixes that are written where they belong, and leave less to find", () => {
    const slips = samplesOf(rule).flatMap(({ text }) => {
      if (!foundIn(rule, text)?.some(({ fixes }) => fixes.length > 0)) return [];
      const found = foundBy(id, text);
      const before = problemsIn(text);
      return (found[0]?.fixes ?? []).flatMap(({ title }, which) => {
        const after = fixed(id, text, which);
        const fresh = problemsIn(after).filter((problem) => !before.includes(problem));
        return [
          ...fresh.map((problem) => `${title}: ${problem}`),
          ...(foundBy(id, after).length < found.length ? [] : [`${title}: as much is found`]),
        ];
      });
    });
    expect(slips).toEqual([]);
  });
});
