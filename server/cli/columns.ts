/** Lines as a terminal shows them: tabs to their stops, wide signs over two columns, nothing that could steer it. */
import stringWidth from "string-width";
import { excerptOf } from "../results/places.ts";
import { visible } from "../text/visible.ts";

interface Cell {
  readonly text: string;
  readonly width: number;
  /** Where it begins in the line, in UTF-16 units. */
  readonly at: number;
}

/** A line ready to print, with the columns that a part of it fills. */
interface Shown {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

const tabStop = 4;
const longest = 160;
/** What is kept before the part that is meant, where a line is too long to show. */
const lead = 40;

/** `start` and `end` are UTF-16 columns, as editors count; an empty part still fills one column. */
export function show(line: string, start: number, end: number, most = longest): Shown {
  const near = excerptOf(line, start, end);
  return showNear(near.text, near.from, near.to, Math.max(Math.min(most, longest), lead * 1.5));
}

function showNear(line: string, start: number, end: number, longest: number): Shown {
  const cells = cellsOf(line);
  const from = columnOf(cells, start);
  const to = Math.max(columnOf(cells, end), from + 1);
  const whole = { text: textOf(cells), from, to };
  return columnOf(cells, line.length) <= longest ? whole : cut(cells, whole, longest);
}

function cut(cells: readonly Cell[], { from, to }: Shown, longest: number): Shown {
  const begin = Math.max(from - lead, 0);
  const kept: Cell[] = [];
  let column = 0;
  let left = 0;
  for (const cell of cells) {
    if (column < begin) left = column + cell.width;
    else if (column + cell.width <= left + longest) kept.push(cell);
    column += cell.width;
  }
  const shift = left === 0 ? 0 : left - 1;
  const edge = longest + (left === 0 ? 0 : 1);
  const text = `${left === 0 ? "" : "…"}${textOf(kept)}${column > left + longest ? "…" : ""}`;
  return { text, from: from - shift, to: Math.max(Math.min(to - shift, edge), from - shift + 1) };
}

const textOf = (cells: readonly Cell[]): string => cells.map((cell) => cell.text).join("");

function columnOf(cells: readonly Cell[], index: number): number {
  let column = 0;
  for (const cell of cells) {
    if (cell.at >= index) break;
    column += cell.width;
  }
  return column;
}

const signs = new Intl.Segmenter("en", { granularity: "grapheme" });

function cellsOf(line: string): Cell[] {
  const cells: Cell[] = [];
  let column = 0;
  for (const { segment, index } of signs.segment(line)) {
    const tab = tabStop - (column % tabStop);
    const text = segment === "\t" ? " ".repeat(tab) : visible(segment);
    const width = segment === "\t" ? tab : widthOf(text);
    cells.push({ text, width, at: index });
    column += width;
  }
  return cells;
}

/** Signs of the East Asian scripts and pictures take two columns; accents and joiners none. */
const widthOf = (sign: string): number => (sign >= " " && sign <= "~" ? 1 : stringWidth(sign));

/** A text in lines of so many columns, broken between words; a word that is longer than a line stands on one of its own. */
export function wrapped(text: string, width: number): string[] {
  if (text.length <= width) return [text];
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && stringWidth(last) + 1 + stringWidth(word) <= Math.max(width, 20)) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines;
}
