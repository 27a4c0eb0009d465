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
  sheet.need(40);
  drawHead();
  const heights = rows.map((row) => heightOf(row, widths, sheet, plain));
  sheet.rows(heights, drawHead, (at) => drawLine(rows[at] ?? [], widths, sheet, plain, 0.25));
  sheet.y += 5;
}

/** As wide as they are where there is room; the widest give way, but no word is broken for it. */
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
  for (let guard = 0; guard < 400 && sum(natural) > room; guard++) {
    const widest = at
      .filter((index) => (natural[index] ?? 0) > (least[index] ?? 0))
      .toSorted((a, b) => (natural[b] ?? 0) - (natural[a] ?? 0))[0];
    if (widest === undefined) break;
    natural[widest] = Math.max((natural[widest] ?? 0) - 4, least[widest] ?? 0);
  }
  const scale = Math.min(1, room / sum(natural));
  return natural.map((width) => width * scale);
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

/** Beside each other as long as there is room: a name small, its fact bold. */
export function drawParticulars({ rows }: Particulars, sheet: Sheet): void {
  const small = { size: 7, grey: true } as const;
  const strong = { size: 8.5, font: "bold" } as const;
  let x = sheet.left;
  sheet.need(14);
  for (const [name, fact] of rows) {
    const nameWidth = sheet.widthOf(shown(name), small) + 4;
    const factWidth = sheet.widthOf(shown(fact), strong) + 14;
    if (x > sheet.left && x + nameWidth + factWidth > sheet.left + sheet.width) {
      sheet.y += 12;
      sheet.need(14);
      x = sheet.left;
    }
    const room = sheet.width - nameWidth;
    const height = sheet.heightOf(shown(fact), room, strong);
    sheet.put(shown(name), { ...small, x, y: sheet.y + 1.4, width: nameWidth });
    sheet.put(shown(fact), { ...strong, x: x + nameWidth, y: sheet.y, width: room });
    if (height > 13) sheet.y += height - 11;
    x += nameWidth + factWidth;
  }
  sheet.y += 16;
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
