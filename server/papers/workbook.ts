/** A table of values as a workbook (.xlsx): figures as numbers, all else as text, and a sheet that says what it is. */
import { unzipSync, zipSync } from "fflate";
import type { Cell, SheetData } from "write-excel-file/node";
import writeWorkbook from "write-excel-file/node";
import { headingOf } from "../reports/schedule/heading.ts";
import type { ValueTable } from "../reports/schedule/values.ts";
import type { Imprint } from "../reports/setting/document.ts";

/** What the first sheet is called, and what the second one says of it. */
export interface SheetWords {
  readonly name: string;
  readonly about: readonly string[];
}

export async function workbookOf(
  { columns, rows }: ValueTable,
  imprint: Imprint,
  words: SheetWords = scheduleSheet,
): Promise<Uint8Array> {
  const head = columns.map(
    (column): Cell => ({ value: headingOf(column), fontWeight: "bold", wrap: true, alignVertical: "bottom" }),
  );
  const data: SheetData = [head, ...rows.map((cells) => cells.map(cellOf))];
  const widths = columns.map((column, at) => ({
    width: widthOf([headingOf(column).replace(" (", "\n("), ...rows.map((row) => row[at] ?? "")]),
  }));
  const written: Uint8Array = await writeWorkbook([
    { data, sheet: words.name, columns: widths, orientation: "landscape", stickyRowsCount: 1, stickyColumnsCount: 2 },
    { data: aboutRows(imprint, words), sheet: "About", columns: [{ width: 90 }] },
  ]).toBuffer();
  return withoutTime(written);
}

/** The same table is the same file, whenever it is written: each part of a packed file carries a time. */
function withoutTime(bytes: Uint8Array): Uint8Array {
  const parts = Object.entries(unzipSync(bytes));
  return zipSync(Object.fromEntries(parts), { mtime: new Date(1980, 0, 1) });
}

export const valuesSheet = "Schedule";

const scheduleSheet: SheetWords = {
  name: valuesSheet,
  about: [
    "Circuit details and test results, one row a circuit. It is part of a certificate or report, and not one by itself.",
    "Fill in or add readings on the first sheet and leave its headings as they are. Nothing that is recorded is overwritten when it is read back: a reading that differs becomes a new test and needs its day.",
    "ok and wrong are results; N/A does not apply; LIM and the reason is what was not tested; >999 is beyond the instrument's range.",
  ],
};

const aboutRows = ({ file, revision, printed }: Imprint, { about: [first = "", ...others] }: SheetWords): SheetData =>
  [
    first,
    `From ${file}, ${revision === undefined ? "no revision" : `revision ${revision}`}${printed === undefined ? "" : `, ${printed}`}.`,
    ...others,
  ].map((text) => [{ value: clean(text), wrap: true }]);

/** Figures as they were read: as many decimals as were written. */
function cellOf(text: string): Cell {
  if (text === "") return null;
  const [, decimals] = /^\d{1,12}(?:\.(\d{1,6}))?$/.exec(text) ?? [];
  if (!/^\d{1,12}(?:\.\d{1,6})?$/.test(text) || /^0\d/.test(text))
    return { value: clean(text), type: String, format: "@" };
  return {
    value: Number(text),
    type: Number,
    format: decimals === undefined ? "0" : `0.${"0".repeat(decimals.length)}`,
  };
}

/** More signs than a cell of a spreadsheet can hold make a workbook that is to be repaired first. */
const mostSigns = 32_767;

/** What XML cannot hold makes a workbook that does not open, and what looks like a sign in its own writing would be read as that. */
const clean = (text: string): string => {
  const whole = text.length > mostSigns ? `${text.slice(0, mostSigns - 1)}…` : text;
  return whole
    .replace(/(?![\t\n\r])\p{Cc}|[\ufffe\uffff]|\p{Surrogate}/gu, "�")
    .replace(/_(?=x[0-9a-f]{4}_)/gi, "_x005F_");
};

const widthOf = (texts: readonly string[]): number =>
  Math.min(Math.max(...texts.flatMap((text) => text.split("\n")).map(({ length }) => length)) + 1.5, 40);
