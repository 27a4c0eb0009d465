import { describe, expect, it } from "vitest";
import { loft, openSample } from "../helpers/cursor.ts";
import { cursorAt, everyFeature, wholeFile } from "../helpers/every-feature.ts";
import { random } from "../helpers/generate.ts";

async function tryOut(text: string, offsets: readonly number[]): Promise<void> {
  const { snapshot } = await openSample(text);
  const all = (): void => {
    wholeFile(snapshot);
    for (const offset of offsets) {
      const cursor = cursorAt(snapshot, text, offset);
      if (cursor) everyFeature(snapshot, cursor);
    }
  };
  expect(all).not.toThrow();
}

const all = (text: string): number[] => Array.from({ length: text.length + 1 }, (_, offset) => offset);

describe("no text makes a feature fall over", () => {
  it("the sample, at every place", () => tryOut(loft, all(loft)));

  // Every fourth place, and every fourth of a line: `npm run fuzz` types on.
  it("the sample cut off at places all through it, with the cursor at its end", async () => {
    for (const offset of all(loft).filter((place) => place % 4 === 1)) await tryOut(loft.slice(0, offset), [offset]);
  });

  it("a line cut off in the middle of the sample", async () => {
    const lines = loft.split("\n");
    for (const [index, line] of lines.entries()) {
      const above = lines.slice(0, index).join("\n").length + (index > 0 ? 1 : 0);
      for (let length = 0; length < line.length; length += 4) {
        const text = lines.with(index, line.slice(0, length)).join("\n");
        await tryOut(text, [above + length]);
      }
    }
  });

  it("pieces of the sample doubled, dropped and moved", async () => {
    const next = random(7);
    for (let round = 0; round < 150; round++) {
      const [a = 0, b = 0, c = 0] = [next(), next(), next()]
        .map((at) => Math.floor(at * loft.length))
        .sort((x, y) => x - y);
      const text = [
        loft.slice(0, b) + loft.slice(a),
        loft.slice(0, a) + loft.slice(b),
        loft.slice(0, a) + loft.slice(b, c) + loft.slice(a, b) + loft.slice(c),
      ][round % 3] as string;
      await tryOut(
        text,
        Array.from({ length: 12 }, () => Math.floor(next() * text.length)),
      );
    }
  });

  it.each([
    ["nothing", ""],
    ["braces", "{{{}}}}{ } {\n}\n"],
    ["a picture", "\u0000\u0001\ufffd\ud83d\ude00 {\n\ud83d\n}"],
    ["another language", 'const a = { "b": [1, 2] };\n<html>\n</html>\n'],
    ["old line ends", loft.replaceAll("\n", "\r")],
    ["returns and line feeds", loft.replaceAll("\n", "\r\n")],
    ["a mark at the beginning", `\ufeff${loft}`],
    ["everything on one line", loft.replaceAll("\n", " ")],
    [
      "a merge left half done",
      loft.replace("    way 5", "<<<<<<< ours\n    way 5\n=======\n>>>>>>> theirs\n    way 5"),
    ],
    [
      "names of the language's own furniture",
      'board constructor {\n  way __proto__ ring {\n  toString 1\n}\n}\ntoString "x"\n',
    ],
  ])("%s", async (_, text) =>
    tryOut(
      text,
      all(text).filter((offset) => text.length < 400 || offset % 7 === 0),
    ),
  );
});
