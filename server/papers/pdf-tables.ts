/** Tables of words, particulars and lines to sign. */

import type { Particulars, Signatures, Table } from "../reports/setting/document.ts";
import { sum } from "../text/sum.ts";
import type { Sheet } from "./sheet.ts";
import { shown } from "./shown.ts";

const size = 8.5;
const between = 8;
const plain = { size } as const;
const heading = { size: 7.5, font: "bold" } as const;

export function drawTable({ head, rows }: Table, sheet: Sheet): void {
  const widths = widthsOf([head, ...rows], sheet);
  const drawHead = (): void => drawLine(head, widths, sheet, heading, 0.7);
  sheet.need(leastTable);
  drawHead();
  const heights = rows.map((row) => heightOf(row, widths, sheet, plain));
  sheet.rows(heights, drawHead, (at) => drawLine(rows[at] ?? [], widths, sheet, plain, 0.25));
  sheet.y += 5;
}

/** How much of a page a table needs to begin on it: its heading and the first rows. */
export function tableToBegin({ head, rows }: Table, sheet: Sheet): number {
  const widths = widthsOf([head, ...rows], sheet);
  const first = rows.slice(0, 3).map((row) => heightOf(row, widths, sheet, plain));
  return Math.max(heightOf(head, widths, sheet, heading) + sum(first), leastTable);
}

const leastTable = 40;

/** As wide as they are where there is room; the widest give way, down to their longest word and no further while they can. */
function widthsOf(rows: readonly (readonly string[])[], sheet: Sheet): number[] {
  const count = rows[0]?.length ?? 0;
  const over = (of: (text: string) => number, at: number): number =>
    Math.max(...rows.map((row) => of(shown(row[at] ?? ""))), 4);
  const at = Array.from({ length: count }, (_, index) => index);
  const natural = at.map((index) => over((text) => sheet.widthOf(text, plain) + 1, index));
  const least = at.map((index) =>
    over((text) => Math.max(...text.split(" ").map((word) => sheet.widthOf(word, plain))) + 1, index),
  );
  const room = sheet.width - between * (count - 1);
  const whole = narrowed(natural, least, room);
  const widths = narrowed(
    whole,
    whole.map(() => 0),
    room,
  );
  const scale = Math.min(1, room / sum(widths));
  return widths.map((width) => width * scale);
}

/** The widest give way until all have room together, none below its `least`. */
function narrowed(wanted: readonly number[], least: readonly number[], room: number): number[] {
  const widths = [...wanted];
  const over = (index: number): boolean => (widths[index] ?? 0) > (least[index] ?? 0);
  for (let guard = 0; guard < 400 && sum(widths) > room; guard++) {
    const [widest] = [...widths.keys()].filter(over).toSorted((a, b) => (widths[b] ?? 0) - (widths[a] ?? 0));
    if (widest === undefined) break;
    widths[widest] = Math.max((widths[widest] ?? 0) - 4, least[widest] ?? 0);
  }
  return widths;
}

type Look = typeof plain | typeof heading;

function heightOf(cells: readonly string[], widths: readonly number[], sheet: Sheet, look: Look): number {
  const heights = widths.map((width, at) => sheet.heightOf(shown(cells[at] ?? ""), width, look));
  return Math.max(...heights, size) + 3.5;
}

function drawLine(
  cells: readonly string[],
  widths: readonly number[],
  sheet: Sheet,
  setting: Look,
  weight: number,
): void {
  const height = heightOf(cells, widths, sheet, setting);
  let x = sheet.left;
  widths.forEach((width, at) => {
    sheet.put(shown(cells[at] ?? ""), { ...setting, x, y: sheet.y + 1.5, width });
    x += width + between;
  });
  sheet.y += height;
  sheet.line(sheet.left, sheet.y, sum(widths) + between * (widths.length - 1), weight);
}

const nameLook = { size: 7, grey: true } as const;
const factLook = { size: 8.5, font: "bold" } as const;

interface Particular {
  readonly name: string;
  readonly nameWidth: number;
  readonly fact: string;
  readonly x: number;
  /** What its line is higher than one line of words. */
  readonly more: number;
}

/** Of each line, beside each other as long as there is room. */
function linesOfParticulars({ rows }: Particulars, sheet: Sheet): readonly (readonly Particular[])[] {
  const lines: Particular[][] = [[]];
  let x = sheet.left;
  for (const row of rows) {
    const [name, fact] = [shown(row[0]), shown(row[1])];
    const nameWidth = sheet.widthOf(name, nameLook) + 4;
    const width = nameWidth + sheet.widthOf(fact, factLook) + 14;
    if (x > sheet.left && x + width > sheet.left + sheet.width) {
      lines.push([]);
      x = sheet.left;
    }
    const height = sheet.heightOf(fact, sheet.width - nameWidth, factLook);
    lines.at(-1)?.push({ name, nameWidth, fact, x, more: height > 13 ? height - 11 : 0 });
    x += width;
  }
  return lines;
}

const lineOfParticulars = 12;
const belowParticulars = 4;

const moreOf = (line: readonly Particular[]): number => sum(line.map(({ more }) => more));

export const particularsHeight = (block: Particulars, sheet: Sheet): number =>
  sum(linesOfParticulars(block, sheet).map((line) => lineOfParticulars + moreOf(line))) + belowParticulars;

/** A name small, its fact bold. */
export function drawParticulars(block: Particulars, sheet: Sheet): void {
  for (const line of linesOfParticulars(block, sheet)) {
    sheet.need(lineOfParticulars + 2);
    for (const { name, nameWidth, fact, x, more } of line) {
      sheet.put(name, { ...nameLook, x, y: sheet.y + 1.4, width: nameWidth });
      sheet.put(fact, { ...factLook, x: x + nameWidth, y: sheet.y, width: sheet.width - nameWidth });
      sheet.y += more;
    }
    sheet.y += lineOfParticulars;
  }
  sheet.y += belowParticulars;
}

/** Of the word and the day behind it. */
const dayWidth = 78;

/** Of a name with its line to sign. */
export const signatureHeight = 26;

export function drawSignatures({ rows }: Signatures, sheet: Sheet): void {
  for (const { role, name, on } of rows) {
    sheet.need(signatureHeight);
    sheet.y += 12;
    const { y, left, width } = sheet;
    const half = width * 0.42;
    sheet.put(shown(role), { x: left, y, width: half, size, font: "bold" });
    const at = left + sheet.widthOf(shown(role), { size, font: "bold" }) + 6;
    sheet.put(shown(name), { x: at, y, width: half, size });
    if (name === "") sheet.line(at, y + 10, left + half - at, 0.5);
    // The day keeps its width on an upright page too; the line to sign takes what is left.
    const date = left + width - dayWidth;
    sheet.put("signature", { x: left + half + 8, y, width: 60, size: 7.5, grey: true });
    sheet.line(left + half + 50, y + 10, date - 8 - (left + half + 50), 0.5);
    sheet.put("date", { x: date, y, width: 30, size: 7.5, grey: true });
    if (on === "") sheet.line(date + 24, y + 10, dayWidth - 24, 0.5);
    else sheet.put(on, { x: date + 24, y, width: dayWidth - 24, size });
    sheet.y += 14;
  }
}
