/** A grid on a page: bands over columns, headings on every page, figures at 9 pt where they fit, whole words only. */

import type { Cell, Column, Grid } from "../reports/setting/document.ts";
import { sum } from "../text/sum.ts";
import type { Setting, Sheet } from "./sheet.ts";
import { shown } from "./shown.ts";

interface Laid {
  readonly column: Column;
  readonly x: number;
  readonly width: number;
}

interface Look {
  readonly size: number;
  readonly head: number;
  readonly gap: number;
}

const padding = 2.2;
const small = { size: 7.5 } as const;

/** Fewer rows than these are not left below a heading at the foot of a page. */
const leastRows = 3;

/** How much of a page a grid needs to begin on it, with `tail` below it where all of its rows are that few. */
export function gridToBegin(grid: Grid, sheet: Sheet, tail: number): number {
  const look = lookOf(grid, sheet);
  const columns = layOut(grid, sheet, look);
  const rows = sum(grid.rows.slice(0, leastRows).map((row) => heightOf(row, columns, sheet, look)));
  const isAll = grid.rows.length <= leastRows;
  return headHeight(columns, sheet, look) + rows + (isAll ? belowGrid(grid, sheet) + tail : 0);
}

/** Notes stand one after the other: a line each would push the signature overleaf. */
const notesOf = (grid: Grid): string => grid.notes.map((note, at) => `${at + 1})\u00a0${shown(note)}`).join("   ");

const belowGrid = (grid: Grid, sheet: Sheet): number => 7 + sheet.heightOf(notesOf(grid), sheet.width, small);

export function drawGrid(grid: Grid, sheet: Sheet, title: string, tail = 0): void {
  const look = lookOf(grid, sheet);
  const columns = layOut(grid, sheet, look);
  const head = (): void => drawHead(grid, columns, sheet, look);
  const again = (): void => {
    sheet.flow(`${shown(title)}, continued`, { font: "bold", size: 9 });
    head();
  };
  sheet.need(70);
  head();
  const heights = grid.rows.map((row) => heightOf(row, columns, sheet, look));
  const notes = notesOf(grid);
  const draw = (at: number): void => drawRow(grid.rows[at] ?? [], columns, sheet, look);
  sheet.rows(heights, again, draw, tail > 0 ? belowGrid(grid, sheet) + tail : 0);
  sheet.y += 4;
  if (notes !== "") sheet.flow(notes, { ...small, after: 1 });
  sheet.y += 3;
}

const columnsOf = ({ bands }: Grid): Column[] => bands.flatMap(({ columns }) => [...columns]);

/** 9 pt, and less only where a row would not fit the page. */
function lookOf(grid: Grid, sheet: Sheet): Look {
  for (let size = 9; size > 6; size -= 0.25) {
    const look = { size, head: Math.min(7, size), gap: 4 };
    const least = leastWidths(grid, sheet, look);
    if (sum(least) + gapsOf(grid, look) <= sheet.width) return look;
  }
  return { size: 6, head: 6, gap: 2 };
}

const gapsOf = ({ bands }: Grid, { gap }: Look): number => gap * Math.max(bands.length - 1, 0);
const cellsAt = ({ rows }: Grid, at: number): Cell[] => rows.flatMap((row) => row[at] ?? []);

const settingOf = ({ kind }: Cell, { size }: Look): Setting => ({
  size,
  font: kind === "calculated" ? "slanted" : kind === "missing" ? "bold" : "plain",
  grey: kind === "absent",
});

const lastSize = 6.5;

/** Room for four figures by hand, and less only where the page would not take it. */
const blankWidth = ({ size }: Look): number => (size > 7.5 ? 26 : size > 6.5 ? 20 : 14);

function cellWidth(cell: Cell, sheet: Sheet, look: Look): number {
  const mark = cell.mark === undefined ? 0 : sheet.widthOf(cell.mark, { size: look.size * 0.65 }) + 0.8;
  const last = cell.last === undefined ? 0 : sheet.widthOf(shown(cell.last), { size: lastSize }) + 2;
  const own = cell.kind === "blank" ? blankWidth(look) : sheet.widthOf(shown(cell.text), settingOf(cell, look));
  return own + mark + last;
}

/** What does not wrap as wide as it is; words as wide as the longest of them. */
function leastWidth(column: Column, cells: readonly Cell[], sheet: Sheet, look: Look): number {
  const head = { size: look.head, font: "bold" } as const;
  const heads = [...column.title.split(" "), column.unit].map((word) => sheet.widthOf(word, head));
  const widths = column.wraps
    ? cells.flatMap((cell) =>
        shown(cell.text)
          .split(" ")
          .map((word) => sheet.widthOf(word, settingOf(cell, look))),
      )
    : cells.map((cell) => cellWidth(cell, sheet, look));
  return Math.max(...heads, ...widths, 6) + 2 * padding;
}

/** Of every column; a band is no narrower than its title, which stands above its columns on one line. */
function leastWidths(grid: Grid, sheet: Sheet, look: Look): number[] {
  const widths = columnsOf(grid).map((column, at) => leastWidth(column, cellsAt(grid, at), sheet, look));
  let end = 0;
  for (const { title, columns } of grid.bands) {
    const own = sum(widths.slice(end, end + columns.length));
    end += columns.length;
    const lacking = sheet.widthOf(title, bandTitle(look)) + 2 * padding - own;
    if (lacking > 0) widths[end - 1] = (widths[end - 1] ?? 0) + lacking;
  }
  return widths;
}

const bandTitle = ({ head }: Look): Setting => ({ size: head + 0.5, font: "bold" });

function layOut(grid: Grid, sheet: Sheet, look: Look): Laid[] {
  const columns = columnsOf(grid);
  const least = leastWidths(grid, sheet, look);
  let spare = sheet.width - sum(least) - gapsOf(grid, look);
  const widths = columns.map((column, at) => {
    const width = least[at] ?? 0;
    if (!column.wraps || spare <= 0) return width;
    const natural = Math.max(...cellsAt(grid, at).map((cell) => cellWidth(cell, sheet, look))) + 2 * padding;
    const more = Math.min(Math.max(natural - width, 0), spare);
    spare -= more;
    return width + more;
  });
  // What is left over is shared, up to a breath of air.
  const air = Math.min(Math.max(spare, 0) / columns.length, 6);
  const starts = new Set(grid.bands.map((_, at) => sum(grid.bands.slice(0, at).map((band) => band.columns.length))));
  let x = sheet.left;
  return columns.map((column, at) => {
    if (at > 0 && starts.has(at)) x += look.gap;
    const laid = { column, x, width: (widths[at] ?? 0) + air };
    x += laid.width;
    return laid;
  });
}

const innerWidth = ({ width }: Laid): number => width - 2 * padding;

const titleHeights = (columns: readonly Laid[], sheet: Sheet, { head }: Look): number[] =>
  columns.map((one) => sheet.heightOf(one.column.title, innerWidth(one), { size: head, font: "bold" }));

/** Of the bands, the titles of the columns and their units. */
const headHeight = (columns: readonly Laid[], sheet: Sheet, look: Look): number =>
  look.head + 6 + Math.max(...titleHeights(columns, sheet, look)) + look.head + 3.5;

function drawHead({ bands }: Grid, columns: readonly Laid[], sheet: Sheet, look: Look): void {
  let at = 0;
  const { head } = look;
  const setting = { size: head, font: "bold" } as const;
  const top = sheet.y;
  for (const { title, columns: own } of bands) {
    const [first, last] = [columns[at], columns[at + own.length - 1]];
    at += own.length;
    if (!first || !last) continue;
    const width = last.x + last.width - first.x;
    sheet.put(title, { ...bandTitle(look), x: first.x + padding, y: top, width: width - padding });
    sheet.line(first.x, top + head + 3.5, width, 0.7);
  }
  const heights = titleHeights(columns, sheet, look);
  const tallest = Math.max(...heights);
  const y = top + head + 6;
  columns.forEach((one, index) => {
    const placed = { x: one.x + padding, width: innerWidth(one) };
    sheet.put(one.column.title, { ...setting, ...placed, y: y + tallest - (heights[index] ?? 0) });
    sheet.put(one.column.unit, { size: head, grey: true, ...placed, y: y + tallest });
  });
  sheet.y = y + tallest + head + 3.5;
  sheet.line(sheet.left, sheet.y, sheet.width, 0.7);
}

const hasBlank = (row: readonly Cell[]): boolean => row.some(({ kind }) => kind === "blank");

/** Of each cell whose words wrap; the others are one line. */
const cellHeights = (row: readonly Cell[], columns: readonly Laid[], sheet: Sheet, look: Look): number[] =>
  columns.map(({ column, width }, at) => {
    const cell = row[at];
    return cell && column.wraps ? sheet.heightOf(shown(cell.text), width - 2 * padding, settingOf(cell, look)) : 0;
  });

const heightOf = (row: readonly Cell[], columns: readonly Laid[], sheet: Sheet, look: Look): number =>
  Math.max(...cellHeights(row, columns, sheet, look), look.size * 1.2, hasBlank(row) ? 15 : 0) + 3;

function drawRow(row: readonly Cell[], columns: readonly Laid[], sheet: Sheet, look: Look): void {
  const heights = cellHeights(row, columns, sheet, look);
  const isBlank = hasBlank(row);
  const height = heightOf(row, columns, sheet, look);
  const y = sheet.y + 1.5;
  columns.forEach((one, at) => {
    const cell = row[at];
    if (!cell) return;
    // Words stand on the line that is written on.
    const down = isBlank && cell.kind !== "blank" ? Math.max(height - 4 - (heights[at] || look.size * 1.2), 0) : 0;
    drawCell(cell, one, { y: y + down, height: height - 3 - down }, sheet, look);
  });
  sheet.y += height;
  sheet.line(sheet.left, sheet.y, sheet.width, 0.25);
}

interface Spot {
  readonly y: number;
  readonly height: number;
}

function drawCell(cell: Cell, { column, x, width }: Laid, { y, height }: Spot, sheet: Sheet, look: Look): void {
  const setting = settingOf(cell, look);
  const left = x + padding;
  if (cell.kind === "missing") sheet.tint(x, y - 1, width, height + 2);
  if (cell.kind === "blank") {
    const last = cell.last === undefined ? "" : shown(cell.last);
    const taken = last === "" ? 0 : sheet.widthOf(last, { size: lastSize }) + 2;
    sheet.line(left, y + height - 1, width - 2 * padding - taken, 0.5);
    if (last !== "")
      sheet.put(last, {
        size: lastSize,
        grey: true,
        x: x + width - padding - taken + 2,
        y: y + height - 9,
        width: taken,
      });
    return;
  }
  const text = shown(cell.text);
  sheet.put(text, { ...setting, x: left, y, width: column.wraps ? width - 2 * padding : width });
  if (cell.mark !== undefined) {
    const at = left + (column.wraps ? 0 : sheet.widthOf(text, setting)) + 0.6;
    sheet.put(cell.mark, { size: look.size * 0.65, x: at, y: y - 0.5, width: 20 });
  }
}
