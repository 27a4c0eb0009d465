import { describe, expect, test } from "vitest";
import type { WordRow } from "../../grammar/params.ts";
import { siteTerms } from "../../grammar/site-terms.ts";
import { blockKinds, vocabulary } from "../../grammar/vocabulary.ts";
import { suggestionFor } from "../../server/model/suggestions.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const rows = blockKinds.flatMap((kind) => Object.entries<WordRow>(vocabulary[kind]));
const ours = new Set([
  "supply",
  ...rows.map(([word]) => word),
  ...rows.flatMap(([, row]) =>
    Object.values(row.params).flatMap(({ accepts, label }) => [
      ...(accepts.kind === "choice" ? Object.keys(accepts.choices) : []),
      ...(label === undefined ? [] : [label]),
    ]),
  ),
]);

test.each(Object.entries(siteTerms))("%s is said for words of the language", (said, words) => {
  expect(said).toBe(said.toLowerCase());
  for (const word of words) expect(ours).toContain(word);
});

describe("a word said on site", () => {
  test.each([
    ["swa", ["singles", "armoured", "flex"], "armoured"],
    ["SWA", ["singles", "armoured", "flex"], "armoured"],
    ["PME", ["TN-S", "TN-C-S", "TT"], "TN-C-S"],
    ["fail", ["ok", "failed"], "failed"],
    ["lightning", ["lighting", "sockets"], "lighting"],
    ["constructor", ["lighting", "sockets"], undefined],
  ])("%s", (said, words, meant) => expect(suggestionFor(said, words)).toBe(meant));
});

describe("a line written as it is said", () => {
  const messages = (...sample: Parameters<typeof inSetting>) =>
    findingsOf(inSetting(...sample).text).map(({ message }) => message);
  const way = (lines: string) => messages(`way 1 radial "Bench" {\n${lines}\n}`);
  const supply = (lines: string) =>
    messages("way 1 spare", { supply: `earthing TN-S\nIpf 1.2 kA\nZe 0.3 Ω\n${lines}` });

  test.each([
    ["phases 3", "“3” does not state how many: did you mean “three”?"],
    ["RA 45 Ω", "“RA” is not a word of the supply: did you mean “electrode”?"],
  ])("%s, in the supply", (line, message) => expect(supply(line)).toContain(message));

  test.each([
    ["rcd BS EN 61008 40 A 100 mA type S", "“type S” is written “delayed”."],
    ["cable swa line 6 mm² cpc 6 mm²", "No cable type is defined as “swa”: did you mean “armoured”?"],
    ["route underground method D", "“underground” does not state how it runs: did you mean “buried”?"],
    ["lines L1", "“lines” is not a word of a way: did you mean “phase”?"],
    ["phases L1", "“phases” is not a word of a way, but of the supply or a board; here the word is “phase”."],
    [
      "live 2026-03-05 {\nrcd 30 mA 1x 22 ms 5x 18 ms\n}",
      "“rcd” has the test current as a multiple of IΔn already: “5x” needs a line of its own.",
    ],
    ["Ib 20 A 21 A", "“Ib” has the design current already: delete one of the two."],
  ])("%s, in a way", (lines, message) => expect(way(lines)).toContain(message));
});
