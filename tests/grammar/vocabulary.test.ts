import { describe, expect, test } from "vitest";
import { lex } from "../../grammar/lexer.ts";
import type { Choices, Param, WordRow } from "../../grammar/params.ts";
import { testBlocks } from "../../grammar/readings.ts";
import { absences, type BlockKind, blockKinds, provenances, structural, vocabulary } from "../../grammar/vocabulary.ts";
import { bindSegment } from "../../server/model/bind.ts";
import type { Problem } from "../../server/model/problems.ts";
import { split } from "../../server/syntax/split.ts";

const rows = blockKinds.flatMap((kind) =>
  (Object.entries(vocabulary[kind]) as [string, WordRow][]).map(([word, row]) => ({ kind, word, row })),
);
const paramsOf = (row: WordRow): Param[] => Object.values(row.params);
const choicesOf = (row: WordRow): Choices[] =>
  paramsOf(row).flatMap(({ accepts }) => (accepts.kind === "choice" ? [accepts.choices] : []));

/** Problems of a text that stands in a kind of block. */
function problemsOf(text: string, within: BlockKind): Problem[] {
  const open: BlockKind[] = [];
  return split(text).flatMap((segment) => {
    if (segment.kind === "close") open.pop();
    const { problems } = bindSegment(segment, open.at(-1) ?? within);
    if (segment.kind === "open") open.push(segment.word as BlockKind);
    return problems;
  });
}

/** Blocks in which a word that begins a new part of the file must never stand. */
const leaves: readonly BlockKind[] = ["instrument", "supply", "way", "dead", "live", "boardDead", "boardLive"];

test("words that begin a new part of the file do not stand inside a block that they end", () => {
  const inside = rows.filter(({ kind, word }) => leaves.includes(kind) && structural.has(word));
  expect(inside.map(({ kind, word }) => `${word} in ${kind}`)).toEqual([]);
});

test("every block but the file is opened by a word", () => {
  const opened = new Set(rows.map(({ row }) => row.opens));
  const never = Object.keys(vocabulary).filter((kind) => kind !== "file" && !opened.has(kind));
  expect(never).toEqual([]);
  for (const kind of opened) if (kind !== undefined) expect(Object.keys(vocabulary)).toContain(kind);
});

test("every word is one token of the lexer", () => {
  const labels = rows.flatMap(({ row }) => paramsOf(row).flatMap(({ label }) => label ?? []));
  for (const word of [
    ...rows.map((entry) => entry.word),
    ...labels,
    ...Object.keys(provenances),
    ...Object.keys(absences),
  ])
    expect(lex(word).tokens.map(({ tokenType, image }) => [tokenType.name, image])).toEqual([["Word", word]]);
});

describe.each(rows)("$word in $kind", ({ kind, word, row }) => {
  test("says what it means in one sentence", () => {
    expect(row.means).toMatch(/^[A-Z].*\.$/);
  });

  test("has an example that is read without a problem", () => {
    expect(row.example.startsWith(word)).toBe(true);
    const problems = problemsOf(row.example, kind);
    expect(problems).toEqual([]);
  });

  test("gives every choice a meaning", () => {
    const meanings = choicesOf(row).flatMap((choices) => Object.values(choices));
    expect(meanings.filter((meaning) => !/^[A-Z].*\.$/.test(meaning))).toEqual([]);
  });

  test("has no label that is also a choice, a sign or a word for where a figure came from", () => {
    const labels = paramsOf(row).flatMap(({ label }) => label ?? []);
    expect(new Set(labels).size).toBe(labels.length);
    const taken = [...choicesOf(row).flatMap(Object.keys), ...Object.keys(provenances), ...Object.keys(absences)];
    expect(labels.filter((label) => taken.includes(label))).toEqual([]);
  });

  test("has no choice that could be meant for two of its arguments", () => {
    const plain = paramsOf(row).filter(({ label }) => label === undefined);
    const all = plain.flatMap(({ accepts }) => (accepts.kind === "choice" ? Object.keys(accepts.choices) : []));
    expect(new Set(all).size).toBe(all.length);
  });

  test("takes as many of its arguments as it likes at the end only", () => {
    const plain = paramsOf(row).filter(({ label }) => label === undefined);
    expect(plain.slice(0, -1).filter((param) => param.many)).toEqual([]);
  });
});

test("every line of a day's tests is read, but for what is noted of them", () => {
  const unread = testBlocks.flatMap((kind) =>
    rows.filter((one) => one.kind === kind && !one.row.reads && !one.row.remark).map(({ word }) => word),
  );
  expect([...new Set(unread)]).toEqual(["temperature"]);
});
