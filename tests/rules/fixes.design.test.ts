import { describe, expect, it } from "vitest";
import { rules } from "../../server/rules/list.ts";
import { fileOfText } from "../../server/workspace/project.ts";
import { fixed, foundBy } from "../helpers/fixing.ts";
import { inSetting, unmark } from "../helpers/sample.ts";

/** Every fix these checks offer on their own samples leaves a sound text that the check has nothing more to say of. */

const families = /^(design|loop|rcd|fault|protective)\//;

const offers = rules
  .filter(({ id }) => families.test(id))
  .flatMap(({ id, examples }) =>
    examples.flatMap(({ bad, setting }) => {
      const text = inSetting(unmark(bad).text, setting).text;
      return (foundBy(id, text)[0]?.fixes ?? []).map(({ title }, which) => ({ id, title, text, which }));
    }),
  );

describe("a fix puts right what it was offered for", () => {
  it("and many are offered", () => expect(offers.length).toBeGreaterThan(30));

  it.each(offers)("$id: $title", ({ id, text, which }) => {
    const after = fixed(id, text, which);
    const problems = [...fileOfText("sample.ways", after).model.problems.values()].flat();
    expect(problems.map(({ message }) => message)).toEqual([]);
    expect(foundBy(id, after).map(({ message }) => message)).toEqual([]);
  });
});

describe("a finding that holds a value against a limit", () => {
  const measured = rules
    .filter(({ id }) => families.test(id))
    .flatMap((rule) => rule.examples.map(({ bad, setting }) => ({ id: rule.id, bad, setting })));

  it.each(measured)("$id names where the limit comes from", ({ id, bad, setting }) => {
    const found = foundBy(id, inSetting(unmark(bad).text, setting).text);
    expect(found.length).toBeGreaterThan(0);
    for (const { value, limit, source } of found) if (value && limit) expect(source?.ref).toMatch(/\S/);
  });
});
