/** This program reads the suite as the suite says, and the suite holds what it should. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { languageChecks } from "../../server/model/problems.ts";
import { groups } from "./inputs.ts";
import { type Outcome, outcomeOf } from "./outcome.ts";

interface KeptCase extends Outcome {
  readonly name: string;
  readonly text: string;
}

const root = path.join(import.meta.dirname, "../../grammar");

const casesOf = (group: string): KeptCase[] => {
  const file = JSON.parse(readFileSync(path.join(root, "conformance", `${group}.json`), "utf8")) as {
    cases: KeptCase[];
  };
  return file.cases;
};

const kept = Object.keys(groups).map((group) => ({ group, cases: casesOf(group) }));

describe.each(kept)("$group", ({ group, cases }) => {
  test("holds the texts it is made of", () => {
    expect(cases.map(({ name, text }) => ({ name, text }))).toEqual(groups[group]);
    expect(new Set(cases.map(({ name }) => name)).size).toBe(cases.length);
  });

  test.each(cases)("$name", ({ text, tree, facts, errors }) => {
    expect(outcomeOf(text)).toEqual({ tree, facts, errors });
  });
});

const all = kept.flatMap(({ cases }) => cases);

test("every fault of the language is in it, but those of several files and of former words", () => {
  const found = new Set(all.flatMap(({ errors }) => errors.map(([id]) => id)));
  expect(languageChecks.filter((id) => !found.has(id))).toEqual(["former-word", "use-cycle"]);
});

test("what is sound has no faults", () => {
  const faulty = casesOf("sound").filter(({ errors }) => errors.length > 0);
  expect(faulty.map(({ name, errors }) => [name, errors[0]?.[0]])).toEqual([
    ["a comment alone", "no-version"],
    ["a word of a later version that may be passed over", "passed-over"],
  ]);
});

test("one thing wrong in what is laid out is one fault", () => {
  const many = casesOf("braces").filter(({ name, errors }) => name.startsWith("laid out") && errors.length !== 1);
  expect(many.map(({ name }) => name)).toEqual([]);
});

test("the specification has a row for every fault of the language, and no other", () => {
  const spec = readFileSync(path.join(root, "SPEC.md"), "utf8");
  const table = spec.slice(spec.indexOf("## 10. Every fault"), spec.indexOf("## 11."));
  const ids = [...table.matchAll(/^\| `([a-z-]+)` +\|/gm)].map((match) => match[1]);
  expect(ids.toSorted()).toEqual(languageChecks.toSorted());
});
