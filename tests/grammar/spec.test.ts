import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { tokenRows } from "../../grammar/tokens.ts";
import { structural } from "../../grammar/vocabulary.ts";
import { format } from "../../server/format/format.ts";
import { findingsOf } from "../helpers/sample.ts";

const spec = readFileSync(`${import.meta.dirname}/../../grammar/SPEC.md`, "utf8");
const samples = [...spec.matchAll(/```wayfile\n([\s\S]*?)```/g)].map((match) => match[1] ?? "");

test("the specification's samples are sound and in the one style", () => {
  expect(samples.length).toBeGreaterThan(0);
  for (const sample of samples) {
    const faults = findingsOf(sample).filter(
      ({ check }) => check.startsWith("language/") && check !== "language/use-missing",
    );
    expect(faults).toEqual([]);
    expect(format(sample)).toBeUndefined();
  }
});

test("the specification names every kind of token, in the lexer's order", () => {
  const table = spec.slice(spec.search(/\| kind +\|/), spec.indexOf("Letters are those"));
  const named = [...table.matchAll(/^\| (\w+(?:, \w+)*) *\| (?!what)/gm)].flatMap((match) =>
    (match[1] ?? "").split(", "),
  );
  expect(named).toEqual(tokenRows.map(({ name }) => name));
});

test("the specification names every word that begins a new part", () => {
  const [line = ""] = /^The words .* can only begin a new part\.$/m.exec(spec) ?? [];
  expect(new Set([...line.matchAll(/`([^`]+)`/g)].map((match) => match[1]))).toEqual(structural);
});

test("the hunk header's pattern finds the line of a way and not that of a reading", () => {
  const source = /xfuncname = "(.*)"/.exec(spec)?.[1] ?? "";
  const pattern = new RegExp(source.replaceAll("[:blank:]", " \\t"));
  expect(pattern.exec('    way 3 ring "Sockets" {')?.[1]).toBe('way 3 ring "Sockets" {');
  expect(pattern.exec("  supply {")?.[1]).toBe("supply {");
  expect(pattern.test("      Zs  0.4 Ω")).toBe(false);
  expect(pattern.test("      ways")).toBe(false);
});
