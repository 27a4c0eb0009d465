/** The first sheet of a workbook as a table. */
import readWorkbook from "read-excel-file/node";
import { unharmed } from "./csv.ts";
import type { ReadTable } from "./read-csv.ts";
import { unpackedWorkbook } from "./unpacked.ts";

export async function tableOfWorkbook(bytes: Uint8Array): Promise<ReadTable> {
  try {
    const unpacked = unpackedWorkbook(bytes);
    if ("failure" in unpacked) return unpacked;
    // Figures as the file has them, not as numbers: their decimals say how finely they were read.
    const sheets = await readWorkbook(Buffer.from(unpacked.bytes), { parseNumber: (text: string) => text });
    const data = sheets[0]?.data ?? [];
    const [head, ...rows] = data.map((cells, at) => ({ line: at + 1, cells: cells.map(textOf) }));
    return head ? { head, rows } : { failure: "Its first sheet is empty." };
  } catch {
    return { failure: "It cannot be read as a workbook (.xlsx)." };
  }
}

function textOf(value: unknown): string {
  if (value === null || value === undefined) return "";
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  return typeof value === "string" ? unharmed(value.trim()) : String(value);
}
