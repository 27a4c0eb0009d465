import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import type { BlockKind } from "../../grammar/vocabulary.ts";
import { bindSegment } from "../../server/model/bind.ts";
import { KnownLines } from "../../server/model/known-lines.ts";
import type { Fact, Facts } from "../../server/model/values.ts";
import { rules } from "../../server/rules/list.ts";
import { documentOf } from "../../server/syntax/document.ts";
import { Dice } from "../fuzz/dice.ts";
import { damaged } from "../fuzz/texts.ts";
import { exampleNames, exampleText } from "../helpers/mutations.ts";
import { inSetting, unmark } from "../helpers/sample.ts";

const conformance = join(import.meta.dirname, "../../grammar/conformance");

const cases = ["sound", "words", "broken", "braces"].flatMap((name): string[] =>
  JSON.parse(readFileSync(join(conformance, `${name}.json`), "utf8")).cases.map(({ text }: { text: string }) => text),
);
const examples = exampleNames.map(exampleText);
const samples = rules.flatMap(({ examples: own }) =>
  own.flatMap(({ bad, good, setting }) => [bad, good].map((one) => inSetting(unmark(one).text, setting).text)),
);

const dice = new Dice(41);
const accidents = [...examples, ...dice.times(400, () => dice.pick(samples))].map((text) => damaged(text, dice));
const texts = [...cases, ...examples, ...samples, ...accidents].flatMap((text) => [
  text,
  text.replaceAll("\n", "\r\n"),
  text.replaceAll(/^(?=\S)/gm, "\t "),
]);

const kinds: readonly BlockKind[] = ["file", "installation", "board"];

/** All that is to be seen of facts, places too. */
const shown = ({ kind, list, broken, struckOut }: Facts): unknown => ({
  kind,
  broken,
  list: list.map(shownFact),
  struckOut: struckOut.map(shownFact),
});

const shownFact = (fact: Fact): unknown => {
  const { word, args, provenance, start, wordEnd, end, record, corrections, misread, inner, segment } = fact;
  const own = { word, args, provenance, start, wordEnd, end, record, corrections, misread, text: segment.text };
  return { ...own, ...(inner ? { inner: shown(inner) } : {}) };
};

it("says of a segment what is read of it as one text, whatever was read before", { timeout: 60_000 }, () => {
  const lines = new KnownLines();
  const different: string[] = [];
  for (const text of texts)
    for (const segment of documentOf(text).segments)
      for (const kind of kinds) {
        const known = lines.factsOf(segment, kind);
        if (!known) continue;
        const { facts, problems } = bindSegment(segment, kind);
        if (problems.length > 0 || JSON.stringify(shown(known)) !== JSON.stringify(shown(facts)))
          different.push(`${kind}: ${segment.text}`);
      }
  expect(different).toEqual([]);
});

it("knows the lines of what is written as it should be", () => {
  const lines = new KnownLines();
  const ways = examples.flatMap((text) => documentOf(text).segments.filter(({ word }) => word === "way"));
  const known = ways.filter((segment) => lines.factsOf(segment, "board"));
  expect(
    ways.filter((segment) => bindSegment(segment, "board").problems.length === 0 && !known.includes(segment)),
  ).toEqual([]);
});

it("goes on as before once it has met more lines than it keeps", () => {
  const lines = new KnownLines();
  const lengths = Array.from({ length: 12_000 }, (_, index) => 1 + (index % 4_000));
  const read = lengths.flatMap((length, index) => {
    const [, way] = documentOf(`board A {\nway ${index} radial {\nlength ${length} m\n}\n}\n`).segments;
    const [header] = (way && lines.factsOf(way, "board"))?.list ?? [];
    return header?.inner?.list.map(({ args }) => args.value) ?? [];
  });
  expect(read).toEqual(lengths.map((value) => expect.objectContaining({ value, unit: "m" })));
});
