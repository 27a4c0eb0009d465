/** What is read off the plain lines of a board is what they say once they are bound. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { siteTerms } from "../../grammar/site-terms.ts";
import { vocabulary } from "../../grammar/vocabulary.ts";
import { bindSegment } from "../../server/model/bind.ts";
import { type Board, readFile } from "../../server/model/file.ts";
import { glanceAtFacts, glanceAtLines, nameAtLine } from "../../server/model/glance.ts";
import { split } from "../../server/syntax/split.ts";
import { generate } from "../helpers/generate.ts";

const boardsOf = (text: string): Board[] => {
  const { boards, installations } = readFile(split(text));
  return [...boards, ...installations.flatMap((one) => one.boards)];
};

const ownLines = ({ segments }: Board) => segments.slice(1).filter(({ word }) => word !== "way");

const words = Object.keys(vocabulary.board);
const examples = [vocabulary.board, vocabulary.way, vocabulary.supply].flatMap((rows) =>
  Object.values(rows).map(({ example }) => example),
);
const feeds = ["supply", "A", "DB1", "BS12", "OL", "LIM", "TT", "L1", "“A”", "a", "A B"].map(
  (from) => `fed-from ${from}`,
);
const odd = [
  "TT",
  "three",
  "phase",
  "earthing",
  "earthng",
  "fed-from",
  "fed",
  '"x',
  "}",
  "{",
  "# earthing TT",
  "\u2028",
  "<<<<<<<",
];
const terms = Object.keys(siteTerms).map((term) => term.replaceAll("-", " "));

const line = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...examples, ...feeds) },
  {
    weight: 1,
    arbitrary: fc.tuple(fc.constantFrom(...words), fc.constantFrom(...odd, ...terms)).map((two) => two.join(" ")),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.constantFrom(...examples, ...feeds), fc.nat(), fc.constantFrom("", ...odd))
      .map(([text, at, more]) => `${text.slice(0, at % text.length)}${more}${text.slice((at % text.length) + 1)}`),
  },
);
const boards = fc
  .tuple(fc.array(line, { maxLength: 5 }), fc.constantFrom("\n", "\r\n", "\r"))
  .map(([lines, end]) => ["board A “x” {".replaceAll(/[“”]/g, '"'), ...lines, "way 1 spare", "}", ""].join(end));

it("lines of a board, whole and broken, are fed from what they say, with the earth and the lines they say", () => {
  fc.assert(
    fc.property(boards, (text) => {
      const known = boardsOf(text);
      expect(known.map(({ head }) => head.glance)).toEqual(known.map(({ head }) => glanceAtFacts(head.facts)));
    }),
    { numRuns: 2_000 },
  );
});

it.each(["A", "DB1", "BS12", "ENA", "OL", "LIM", "TT", "way"])(
  "a board %s has the name that its first line says",
  (name) => {
    for (const end of ["\n", "\r\n"]) {
      const [open] = split(`board ${name} "Hall" {${end}}${end}`);
      if (!open) throw new Error("There is no first line.");
      const { facts, problems } = bindSegment(open, "installation");
      const plain = nameAtLine(open);
      const said = facts.one("board" as never) as { args: { name?: { value: string } } } | undefined;
      expect([said?.args.name?.value, problems.length === 0 ? plain : undefined]).toEqual([
        plain ?? said?.args.name?.value,
        plain,
      ]);
    }
  },
);

it("the boards of a large file are plain", () => {
  const known = boardsOf(generate({ ways: 200, seed: 3 }));
  expect(known.length).toBeGreaterThan(5);
  expect(known.filter((board) => glanceAtLines(ownLines(board)) === undefined)).toEqual([]);
  expect(known.map(({ segments }) => segments[0] && nameAtLine(segments[0]))).toEqual(
    known.map(({ head }) => head.name),
  );
});

it.each([
  ["an earth of its own", "earthing TT"],
  ["an earth that is spelt wrongly", "earthng TT"],
  ["its lines", "phases three"],
  ["a name that is no plain one", "fed-from DB-1"],
  ["two feeds", "fed-from A\nfed-from B"],
  ["a block that says more behind its end", "live 2026-03-05 {\n  Zdb 0.2 Ω\n} fed-from A"],
  ["the mark of a merge conflict", "<<<<<<< ours"],
])("what says %s is bound", (_, lines) => {
  const [board] = boardsOf(`board X "x" {\n${lines}\n}\n`);
  expect(board && glanceAtLines(ownLines(board))).toBeUndefined();
});
