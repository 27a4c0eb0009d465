/** One slip of the pen costs one fault, of whatever kind it is, and never more than three. */
import { describe, expect, test } from "vitest";
import { exampleNames, exampleText, kinds, languageFaults, mutationsOf } from "../helpers/mutations.ts";
import { random } from "../helpers/random.ts";

const perExample = 3;
const next = random(20_260_305);

/** Some mutations of each example: the same in every run. */
const chosen = kinds.map((kind) => ({
  kind,
  texts: exampleNames.flatMap((name) => {
    const all = mutationsOf(kind, name);
    const few = Array.from({ length: Math.min(perExample, all.length) }, () => all[Math.floor(next() * all.length)]);
    return few.flatMap((mutation) => (mutation ? [{ name, mutation }] : []));
  }),
}));

const median = (counts: readonly number[]): number => counts.toSorted((a, b) => a - b)[counts.length >> 1] ?? 0;

test("the examples have no faults of the language to begin with", () => {
  expect(exampleNames.flatMap((name) => languageFaults(name, exampleText(name)))).toEqual([]);
});

describe.each(chosen)("$kind", ({ texts }) => {
  const counts = texts.map(({ name, mutation }) => languageFaults(name, mutation.text).length);

  test("costs one fault", () => {
    expect(texts.length).toBeGreaterThan(0);
    expect(median(counts)).toBeLessThanOrEqual(1);
  });

  test("costs three at most", () => {
    expect(
      texts.filter((_, index) => (counts[index] ?? 0) > 3).map(({ name, mutation }) => `${name}:${mutation.line}`),
    ).toEqual([]);
  });
});
