import type { Edit } from "../../server/syntax/document.ts";

type Next = () => number;

/** One edit of a kind that a person makes, mostly outside the ways: there it can matter to all of them. */
export function lineEdits(text: string, next: Next): Edit {
  const lines = text.split("\n");
  const at = lineIn(lines, next);
  const kind = Math.floor(next() * 12);
  const line = lines[at] ?? "";
  if (kind < 6) return digit(line, at, next);
  if (kind === 6) return whole(at, "");
  if (kind === 7) return whole(at, `${line}\n${line}\n`);
  if (kind === 8)
    return { range: { start: { line: at, character: 0 }, end: { line: at, character: 0 } }, text: "# a remark\n" };
  if (kind === 9) return brace(lines, next);
  if (kind === 10) return whole(at, `${(lines[lineIn(lines, next)] ?? "").trim()}\n`);
  const from = Math.floor(next() * (line.length + 1));
  return { range: { start: { line: at, character: from }, end: { line: at, character: from + 1 } }, text: "" };
}

/** A digit of any line. */
export function digitEdit(text: string, next: Next): Edit {
  const lines = text.split("\n");
  const at = Math.floor(next() * lines.length);
  return digit(lines[at] ?? "", at, next);
}

/** Lines further in than a board's own are those of ways, mostly. */
function lineIn(lines: readonly string[], next: Next): number {
  for (let tries = 0; tries < 40; tries++) {
    const at = Math.floor(next() * lines.length);
    if (!/^ {6}/.test(lines[at] ?? "") || next() < 0.15) return at;
  }
  return 0;
}

function digit(line: string, at: number, next: Next): Edit {
  const digits = [...line.matchAll(/\d/g)];
  const found = digits[Math.floor(next() * digits.length)];
  if (!found) return whole(at, `${line}\n`);
  const range = { start: { line: at, character: found.index }, end: { line: at, character: found.index + 1 } };
  return { range, text: String(Math.floor(next() * 10)) };
}

const whole = (at: number, text: string): Edit => ({
  range: { start: { line: at, character: 0 }, end: { line: at + 1, character: 0 } },
  text,
});

/** A brace is lost. */
function brace(lines: readonly string[], next: Next): Edit {
  const places = lines.flatMap((line, at) =>
    [...line.matchAll(/[{}]/g)].map(({ index }) => ({ line: at, character: index })),
  );
  const start = places[Math.floor(next() * places.length)] ?? { line: 0, character: 0 };
  return { range: { start, end: { ...start, character: start.character + 1 } }, text: "" };
}
