import { expect, test } from "vitest";
import { formattedLine } from "../../server/format/line.ts";
import { documentOf } from "../../server/syntax/document.ts";
import { applyEdits } from "../../server/text/lines.ts";

const left = (text: string, line: number): string => applyEdits(text, formattedLine(documentOf(text), line));
const way = (...lines: string[]): string =>
  `way 3 radial "Yard" {\n${lines.map((line) => `  ${line}\n`).join("")}  \n}\n`;

test("a line that is left loses the blanks at its end, and nothing else of the file changes", () => {
  expect(left(way("route clipped ", "length 12 m  "), 2)).toBe(way("route clipped ", "length 12 m"));
  expect(left(way("route clipped").replaceAll("\n", "\r\n"), 1)).toBe(way("route clipped").replaceAll("\n", "\r\n"));
});

test("it takes the column of the line above, where there is one", () => {
  expect(left(way("device  BS EN 60898 B6 6 kA", "cable flat-twin line 1.5 mm² cpc 1 mm²"), 2)).toContain(
    "\n  cable   flat-twin",
  );
  expect(left(way("device BS EN 60898 B6 6 kA", "cable flat-twin"), 2)).toContain("\n  cable flat-twin\n");
  expect(left(way("Ib  2 A", "supplementary-bonding fitted"), 2)).toContain("\n  supplementary-bonding fitted\n");
});

test("a unit is spelt as it is written", () => {
  const board = 'board A "Yard" {\n  way 3 radial "Yard" {\n    length 12m\n    Ib 2 A\n  }\n}\n';
  expect(left(board, 2)).toContain("\n    length 12 m\n");
});

test("a line with only its indentation is where somebody goes on to write", () => {
  const text = way("length 12 m");
  expect(left(text, 2)).toBe(text);
  expect(left(text, 40)).toBe(text);
});
