/**
 * A workbook made small before it is read: it is a packed file from outside, a few kilobytes of which can hold gigabytes,
 * or name a cell in the last of a million rows, for which a reader makes all the others.
 */
import { strFromU8, type Unzipped, unzipSync, zipSync } from "fflate";

/** Bytes: what a schedule of a thousand circuits needs, many times over. */
const mostPacked = 2_000_000;
const mostUnpacked = 32_000_000;
/** Cells up to the last row and column of a sheet. */
const mostCells = 1_000_000;

/** Parts of a workbook; one of a thousand sheets has fewer. */
const mostParts = 5_000;

const tooLarge = { failure: "It is too large for a table of readings." };

/** The same workbook with nothing in it but what was looked at here. Throws where it is none. */
export function unpackedWorkbook(bytes: Uint8Array): { readonly bytes: Uint8Array } | { readonly failure: string } {
  const parts = partsOf(bytes);
  if (!parts) return tooLarge;
  for (const part of Object.values(parts)) {
    const reach = reachOf(strFromU8(part));
    if (reach.row * reach.column > mostCells)
      return {
        failure: `A sheet of it reaches to row ${reach.row} and column ${reach.column}: delete the empty rows and columns at its end, or save the table as CSV.`,
      };
  }
  const level = 0;
  return {
    bytes: zipSync(Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, [part, { level }]]))),
  };
}

/** What is text in it; pictures are left packed. Nothing where it is too large. */
function partsOf(bytes: Uint8Array): Unzipped | undefined {
  let [count, packed, unpacked] = [0, 0, 0];
  const isSmall = (): boolean => packed <= mostPacked && unpacked <= mostUnpacked;
  const parts = unzipSync(bytes, {
    filter: ({ name, size, originalSize }) => {
      // Its table of contents can state any number of parts, whatever it has.
      if (++count > mostParts) throw new Error("It has too many parts.");
      if (!/\.(?:xml|rels)$/i.test(name)) return false;
      packed += size;
      unpacked += originalSize;
      return isSmall();
    },
  });
  return isSmall() ? parts : undefined;
}

/** The last row and column that a sheet has a cell in. Throws where an address is none, or hides behind signs of XML. */
function reachOf(sheet: string): { readonly row: number; readonly column: number } {
  let [row, column, rows] = [1, 1, 0];
  for (const [, address = ""] of sheet.matchAll(/<(?:\w+:)?(?:c|row)\b[^<]*?\br\s*=\s*["']([^"'<]*)/g)) {
    const [, letters, digits] = /^([A-Za-z]*)(\d+)$/.exec(address) ?? [];
    if (letters === undefined) throw new Error(`“${address}” is no cell.`);
    row = Math.max(row, Number(digits));
    column = Math.max(column, columnOf(letters));
  }
  for (const _ of sheet.matchAll(/<(?:\w+:)?row\b/g)) rows++;
  return { row: Math.max(row, rows), column };
}

const columnOf = (letters: string): number =>
  [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
