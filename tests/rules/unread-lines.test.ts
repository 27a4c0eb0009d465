/** A line that is half typed or wrong is one fault on itself, and no other line is found wanting for it. */
import { describe, expect, test } from "vitest";
import { allFaults, exampleNames, exampleText } from "../helpers/mutations.ts";

/** Lines that others are judged by. */
const words = [
  "work",
  "earthing",
  "phase",
  "stage",
  "premises",
  "standard",
  "serves",
  "Ib",
  "load",
  "diversity",
  "main-switch",
  "feeds",
  "cutout",
  "Ze",
  "designed",
  "R1+R2",
  "Zs",
];

/** Of each example as many lines of a word. */
const most = 2;

const linesOf = (name: string, word: string): readonly number[] =>
  exampleText(name)
    .split("\n")
    .flatMap((line, index) => (line.trim().startsWith(`${word} `) && !line.endsWith("{") ? [index] : []))
    .slice(0, most);

const ways: Readonly<Record<string, (line: string, word: string) => string>> = {
  "without what follows its word": (line, word) => line.slice(0, line.indexOf(word) + word.length),
  "with a word that means nothing": (line, word) => `${line.slice(0, line.indexOf(word) + word.length)} xyzzy`,
};

const shown = ({ check, line }: { check: string; line: number }): string => `${line} ${check}`;

/** Findings that were not there before, but for the fault of the line itself. */
function added(name: string, index: number, put: string): readonly string[] {
  const before = new Set(allFaults(name, exampleText(name)).map(shown));
  const after = allFaults(name, exampleText(name).split("\n").with(index, put).join("\n"));
  const own = after.filter(({ check, line }) => line === index + 1 && check.startsWith("language/"));
  if (own.length !== 1) return [`${index + 1} has ${own.length} faults of its own`];
  return after.flatMap((one) => (own.includes(one) || before.has(shown(one)) ? [] : [`${name}: ${shown(one)}`]));
}

describe.each(words)("%s", (word) => {
  const written = exampleNames.flatMap((name) => linesOf(name, word).map((index) => ({ name, index })));

  test.each(Object.keys(ways))("%s", (way) => {
    expect(written.length).toBeGreaterThan(0);
    expect(
      written.flatMap(({ name, index }) => {
        const line = exampleText(name).split("\n")[index] ?? "";
        return added(name, index, ways[way]?.(line, word) ?? line);
      }),
    ).toEqual([]);
  });
});
