/** Where a fix writes its line: what was there keeps its lines, and the new one stands in the block. */
import { expect, it } from "vitest";
import { lineInBlock } from "../../server/rules/common/writing.ts";

type Header = Parameters<typeof lineInBlock>[0];
const header = (text: string): Header =>
  ({
    segment: { text },
    start: text.search(/\S/),
    end: text.length,
    wordEnd: text.search(/\S/) + 3,
    args: {},
  }) as Header;

it.each([
  ["on many lines", "  way 1 {\n    length 5 m\n  }\n", "  way 1 {\n    note\n    length 5 m\n  }\n"],
  ["with a remark behind its brace", "  way 1 { # there\n  }\n", "  way 1 { # there\n    note\n  }\n"],
  ["on one line", "  way 1 { length 5 m }\n", "  way 1 {\n    note\n    length 5 m }\n"],
  ["with its line ends of two signs", "way 1 {\r\n  length 5 m\r\n}\r\n", "way 1 {\r\n  note\n  length 5 m\r\n}\r\n"],
  ["that ends the text", "  way 1 {", "  way 1 {\n    note\n"],
])("a block %s", (_, text, after) => {
  const [fix] = lineInBlock(header(text), "note");
  expect(fix?.edits).toHaveLength(1);
  const { start = 0, end = 0, text: by = "" } = fix?.edits[0] ?? {};
  expect(text.slice(0, start) + by + text.slice(end)).toBe(after);
});

it("nothing is written into what opens no block", () => {
  expect(lineInBlock(header("  way 1\n"), "note")).toEqual([]);
});
