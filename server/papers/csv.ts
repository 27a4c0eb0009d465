/** A table of values as CSV (RFC 4180), to be opened by a spreadsheet: UTF-8 with its mark, lines end with CR LF. */

import { headingOf } from "../reports/schedule/heading.ts";
import type { ValueTable } from "../reports/schedule/values.ts";

export function csvOf({ columns, rows }: ValueTable): string {
  const lines = [columns.map(headingOf), ...rows].map((cells) =>
    cells.map((text) => quoted(harmless(steady(text)))).join(","),
  );
  return `\ufeff${lines.map((line) => `${line}\r\n`).join("")}`;
}

/** Without signs that a terminal would obey: no cell shows them. */
const steady = (text: string): string => text.replace(/(?![\t\n\r])\p{Cc}/gu, "�");

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/**
 * A spreadsheet takes a text that begins like a formula for one, and some look past blanks and line ends for it. Such a
 * text gets an apostrophe before it, which is taken away again where the file is read back. Numbers stay numbers.
 */
export const harmless = (text: string): string => (formula.test(text) && !number.test(text) ? `'${text}` : text);

/** Takes the apostrophe away that `harmless` put there. */
export const unharmed = (text: string): string =>
  text.startsWith("'") && formula.test(text.slice(1)) ? text.slice(1) : text;

const formula = /^[\s\p{C}]*[=+\-@＝＋－＠]|^[\t\r]|[\r\n][\s\p{C}]*[=+\-@＝＋－＠]/u;
const number = /^[+-]?\d+(?:\.\d+)?$/;
