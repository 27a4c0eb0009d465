import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { formattedLine } from "../../server/format/line.ts";
import { documentOf } from "../../server/syntax/document.ts";
import { applyEdits } from "../../server/text/lines.ts";

const left = (text: string, line: number): string => applyEdits(text, formattedLine(documentOf(text), line));
const way = (...lines: string[]): string =>
  `way 3 radial "Yard" {\n${lines.map((line) => `  ${line}\n`).join("")}  \n}\n`;

test("a line that is left loses the blanks at its end, and nothing else of the file changes", () => {
  expect(left(way("route clipped ", "length 12  "), 2)).toBe(way("route clipped ", "length 12"));
  expect(left(way("route clipped ").replaceAll("\n", "\r\n"), 1)).toBe(
    way("route        clipped").replaceAll("\n", "\r\n"),
  );
});

test("what it says begins where the formatter has it, whatever stands above", () => {
  const cable = "cable flat-twin line 1.5 mm² cpc 1 mm²";
  for (const device of ["device  BS EN 60898 B6 6 kA", "device BS EN 60898 B6 6 kA"])
    expect(left(way(device, cable), 2)).toBe(way(device, "cable        flat-twin  line 1.5 mm²  cpc 1 mm²"));
  expect(left(way("Ib  2 A", "supplementary-bonding  fitted"), 2)).toContain("\n  supplementary-bonding fitted\n");
  expect(left(way("dead 2026-03-04 {", "  at S1 L-E 0.2 Ω", "}"), 2)).toContain("\n    at S1        L-E 0.2 Ω\n");
});

test("half a line stays where its writer has it", () => {
  expect(left(way("cable flat-twin line"), 1)).toContain("\n  cable flat-twin line\n");
});

test("a way that is not closed yet has its lines laid out as well", () => {
  expect(left("board A {\n  way 1 radial {\n    Ib  2A\n", 2)).toContain("\n    Ib           2 A\n");
});

test("every line of the examples, written with single blanks and left, is as the formatter has it", () => {
  for (const name of ["heron-wharf/workshop.ways", "alder-row/periodic.ways"]) {
    const text = readFileSync(new URL(`../../examples/${name}`, import.meta.url), "utf8");
    const lines = text.split("\n");
    lines.forEach((line, at) => {
      const typed = line.replace(/(\S) +/g, "$1 ");
      if (line.includes("#") || typed === line) return;
      const before = lines.with(at, typed).join("\n");
      expect(left(before, at)).toBe(text);
    });
  }
});

test("where the editor indents otherwise a line stands where its neighbours do", () => {
  const four = 'board A "Yard" {\n    way 3 radial "Yard" {\n        length 12m\n\tIb 2 A\n    }\n}\n';
  const after = (line: number) => applyEdits(four, formattedLine(documentOf(four), line, false));
  expect(after(2)).toContain("\n        length       12 m\n");
  expect(after(3)).toContain("\n\tIb           2 A\n");
});

test("a unit is spelt as it is written", () => {
  const board = 'board A "Yard" {\n  way 3 radial "Yard" {\n    length 12m\n    Ib 2 A\n  }\n}\n';
  expect(left(board, 2)).toContain("\n    length       12 m\n");
});

test("a line with only its indentation is where somebody goes on to write", () => {
  const text = way("length 12 m");
  expect(left(text, 2)).toBe(text);
  expect(left(text, 40)).toBe(text);
});
