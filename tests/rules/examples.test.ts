import { describe, expect, it } from "vitest";
import { formerWords } from "../../grammar/former-words.ts";
import { pages } from "../../server/rules/frame/catalogue.ts";
import { rules } from "../../server/rules/list.ts";
import { inSetting, laidOut, type Mark, marksOf, marksOfCheck, unmark } from "../helpers/sample.ts";

/** Every rule carries its own samples: what is marked must be found, and nothing else may be. */
describe.each(rules.map((rule) => [rule.id, rule] as const))("%s", (_, rule) => {
  it("has a sample", () => expect(rule.examples.length).toBeGreaterThan(0));

  it.each(rule.examples.map((example, index) => [index, example] as const))(
    "finds what sample %i marks",
    (_, { bad, setting }) => {
      const { text, marks } = unmark(bad);
      const placed = inSetting(text, setting);
      const found = marksOf(rule, placed.text);
      expect(marks.length).toBeGreaterThan(0);
      expect(sorted(found.map(({ mark }) => mark))).toEqual(
        sorted(marks.map((mark) => ({ ...mark, line: mark.line + placed.above }))),
      );
    },
  );

  it.each(rule.examples.map((example, index) => [index, example] as const))(
    "is silent on the good sample %i",
    (_, { good, setting }) => {
      expect(marksOf(rule, inSetting(unmark(good).text, setting).text).map(({ message }) => message)).toEqual([]);
    },
  );

  it("shows its samples as the formatter lays them out", () => {
    for (const { bad, good } of rule.examples) for (const sample of [bad, good]) expect(sample).toBe(laidOut(sample));
  });
});

/** No schedule makes a check fail or last, a sample of 8 MB is none to read, and no word has a former name before one is renamed. */
const unshown: ReadonlySet<string> = new Set([
  "check/failed",
  "check/too-large",
  "check/under-way",
  ...(formerWords.length === 0 ? ["language/former-word"] : []),
]);

/** Checks that are made without a rule, those of the language among them, carry samples just so. */
const withoutRule = pages.filter(({ id }) => !unshown.has(id) && !rules.some((rule) => rule.id === id));

describe.each(withoutRule.map((page) => [page.id, page] as const))("%s", (_, { id, examples }) => {
  // Nothing has a former name before the first release; the first one that does needs its sample.
  // What history holds no one file can show: its check is tried on a repository.
  const none = (id === "language/former-word" && formerWords.length === 0) || id.startsWith("history/");
  it("has a sample", () => expect(examples.length).toBeGreaterThanOrEqual(none ? 0 : 1));

  it.each(examples.map((example, index) => [index, example] as const))(
    "finds what sample %i marks, and is silent on the good one",
    (_, { bad, good, setting }) => {
      const { text, marks } = unmark(bad);
      const placed = inSetting(text, setting);
      expect(marks.length).toBeGreaterThan(0);
      expect(sorted(marksOfCheck(id, placed.text))).toEqual(
        sorted(marks.map((mark) => ({ ...mark, line: mark.line + placed.above }))),
      );
      expect(marksOfCheck(id, inSetting(unmark(good).text, setting).text)).toEqual([]);
      // What is bad here is a fault that the formatter leaves as it is.
      expect(good).toBe(laidOut(good));
    },
  );
});

const sorted = (marks: readonly Mark[]): Mark[] => [...marks].sort((a, b) => a.line - b.line || a.from - b.from);
