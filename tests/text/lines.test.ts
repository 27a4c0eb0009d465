import { describe, expect, it } from "vitest";
import { documentOf, textOf } from "../../server/syntax/document.ts";
import { applyEdit } from "../../server/syntax/edit.ts";
import { lineStarts, offsetOf } from "../../server/text/lines.ts";

describe("a place beyond the end of its line", () => {
  const at = (text: string, line: number): number => offsetOf(lineStarts(text), text, { line, character: 99 });

  it.each([
    ["a\r\nb", 1],
    ["a\nb", 1],
    ["a\rb", 1],
    ["\r\nb", 0],
    ["a\r\n", 1],
  ])("of %j is the end of what is written there", (text, end) => expect(at(text, 0)).toBe(end));

  it("is the end of the text on the last line, and below it", () => {
    expect(at("a\r\nbc", 1)).toBe(5);
    expect(at("a\r\n", 1)).toBe(3);
    expect(at("a", 7)).toBe(1);
  });

  it.each(["a\r\nb", 'wayfile 1\r\nboard A "B" {\r\n}\r\n'])(
    "breaks no line of %j where something is put in",
    (text) => {
      const place = { line: 0, character: 99 };
      const after = textOf(applyEdit(documentOf(text), { range: { start: place, end: place }, text: "X" }));
      expect(after).toBe(text.replace("\r\n", "X\r\n"));
    },
  );
});
