import { describe, expect, it } from "vitest";
import { actionsFor, findingsTouching } from "../../server/features/actions.ts";
import { complete } from "../../server/features/completion.ts";
import { type Cursor, withEnclosingBlock } from "../../server/features/cursor.ts";
import { folds } from "../../server/features/folding.ts";
import { hover } from "../../server/features/hover.ts";
import { links } from "../../server/features/links.ts";
import { definitions, nameAt, occurrences } from "../../server/features/names.ts";
import { rename } from "../../server/features/rename.ts";
import { selections } from "../../server/features/selection.ts";
import { symbols } from "../../server/features/symbols.ts";
import { tokensIn } from "../../server/features/tokens.ts";
import { resolveUri } from "../../server/workspace/uri.ts";
import type { Snapshot } from "../../server/workspace/workspace.ts";
import { loft, openSample } from "../helpers/cursor.ts";
import { random } from "../helpers/generate.ts";

/** Runs every feature at one place. A feature that throws fails the test; so does one that points outside the text. */
function everyFeature(snapshot: Snapshot, cursor: Cursor): void {
  const shown = hover(snapshot, cursor);
  if (shown) expectInside(shown.spot);
  for (const { spot } of complete(snapshot, cursor)) expectInside(spot);
  const named = nameAt(snapshot, cursor);
  if (named) {
    definitions(snapshot, named);
    occurrences(snapshot, named);
    rename(snapshot, cursor, "other");
  }
  let inner = { start: cursor.offset, end: cursor.offset };
  for (const span of selections(snapshot, cursor)) {
    expect(span.start <= inner.start || inner.start === inner.end).toBe(true);
    inner = span;
  }
}

function wholeFile(snapshot: Snapshot): void {
  symbols(snapshot);
  for (const { first, last } of folds(snapshot)) expect(last).toBeGreaterThan(first);
  links(snapshot, resolveUri);
  for (const { segment, within } of withEnclosingBlock(snapshot.file.document.segments)) {
    let at = 0;
    for (const { start, length } of tokensIn(segment, within)) {
      expect(start).toBeGreaterThanOrEqual(at);
      at = start + length;
    }
    expect(at).toBeLessThanOrEqual(segment.text.length);
  }
  for (const { edits, segment } of actionsFor(
    snapshot,
    findingsTouching(snapshot, () => true),
  )) {
    for (const { start, end } of edits) expectInside({ segment, start, end });
  }
}

function expectInside({ segment, start, end }: { segment: { text: string }; start: number; end: number }): void {
  expect(start).toBeGreaterThanOrEqual(0);
  expect(end).toBeGreaterThanOrEqual(start);
  expect(end).toBeLessThanOrEqual(segment.text.length);
}

async function tryOut(text: string, offsets: readonly number[]): Promise<void> {
  const { snapshot } = await openSample(text);
  wholeFile(snapshot);
  for (const offset of offsets) {
    const before = text.slice(0, offset).split("\n");
    const cursor = snapshot.positions.at({ line: before.length - 1, character: before.at(-1)?.length ?? 0 });
    if (cursor) everyFeature(snapshot, cursor);
  }
}

const all = (text: string): number[] => Array.from({ length: text.length + 1 }, (_, offset) => offset);

describe("no text makes a feature fall over", () => {
  it("the sample, at every place", () => tryOut(loft, all(loft)));

  it("the sample cut off at every place, with the cursor at its end", async () => {
    for (const offset of all(loft)) await tryOut(loft.slice(0, offset), [offset]);
  });

  it("a line cut off at every place in the middle of the sample", async () => {
    const lines = loft.split("\n");
    for (const [index, line] of lines.entries()) {
      const above = lines.slice(0, index).join("\n").length + (index > 0 ? 1 : 0);
      for (let length = 0; length < line.length; length += 2) {
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
