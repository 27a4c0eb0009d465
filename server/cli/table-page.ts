/** `wayfile explain table 41.3`: the figures held of a table, cell by cell, each with how far it is to be trusted. */

import { proseOf } from "../../grammar/prose.ts";
import { headingOf } from "../tables/headings.ts";
import { tables } from "../tables/index.ts";
import { type Standing, standingWords } from "../tables/source.ts";
import type { Row, Table, Value } from "../tables/table.ts";
import { lines, type TerminalText, term } from "../text/terminal.ts";
import type { Colours } from "./colours.ts";
import { wrapped } from "./columns.ts";

/** The tables a person may mean by a number such as `41.3`, `Table 41.3`, or by our own name for one. */
export function tablesNamed(text: string): readonly Table<object>[] {
  const asked = text.trim().toLowerCase().replace(/\s+/g, " ");
  const number = asked.replace(/^tables? /, "");
  const isAsked = asked !== number;
  return tables.filter(
    ({ id, ref }) =>
      id === number || (isAsked || /^\d*[a-z]?[\d.]+[a-z\d]*$/.test(number) ? hasNumber(ref, number) : false),
  );
}

/** `41.3` is Table 41.3 and not Table 41.31. */
const hasNumber = (ref: string, number: string): boolean => numbersIn(ref).some((one) => one.toLowerCase() === number);

const numbersIn = (ref: string): string[] =>
  [...ref.matchAll(/\bTables? ([\w.]+(?:(?:, | and )[\w.]+)*)/gi)].flatMap(([, numbers = ""]) =>
    numbers.split(/, | and /).map((one) => one.replace(/\.$/, "")),
  );

/** The numbers of all tables that are held, in their order. */
export const tableNumbers = (): string[] =>
  [...new Set(tables.flatMap(({ ref }) => numbersIn(ref)))].sort((a, b) => a.localeCompare(b, "en", { numeric: true }));

export function tablePage(table: Table<object>, colours: Colours, width = 100): TerminalText {
  const units = table.units as Readonly<Record<string, string>>;
  const all = Object.keys(units);
  const columns = all.filter((name) => !isForProgram(name, all, table));
  const called = (name: string): string => headingOf(table.id, name) ?? name;
  const head = columns.map((name) => [called(name), units[name]].filter(Boolean).join(", "));
  const rows = table.rows.map((row) => [...columns.map((name) => cellText(row, name)), row.note ?? ""]);
  const elsewhere = Object.entries(table.refs ?? {});
  const marks = new Set(table.rows.flatMap((row) => [row.standing, ...(Object.values(row.cells ?? {}) as Standing[])]));
  const parts = [
    term`${colours.bold(table.title)}\n${colours.dim(`${table.ref}; stated to ${table.edition}`)}`,
    lines(wrapped(proseOf(table.applies), width).join("\n")),
    lines(grid([...head, ""], rows)),
    lines([...marks].map((standing) => `${signs[standing] || "no mark"}  ${standingWords[standing]}`).join("\n")),
    ...(elsewhere.length > 0
      ? [lines(elsewhere.map(([name, ref]) => `“${called(name)}” is printed in ${ref}.`).join("\n"))]
      : []),
    ...(table.notes.length > 0 ? [lines(table.notes.flatMap((note) => wrapped(proseOf(note), width)).join("\n"))] : []),
    lines(
      `Figures are to be verified in your own copy. Quoted on ${table.quotedOn} public ${table.quotedOn === 1 ? "page" : "pages"}.`,
    ),
  ];
  return term`${term.join(parts, "\n\n")}\n`;
}

/** What stands behind a figure that is not printed or quoted. */
const signs: Readonly<Record<Standing, string>> = {
  printed: "",
  quoted: "",
  computed: "=",
  practice: "~",
  memory: "?",
};

function cellText(row: Row<object>, name: string): string {
  const value = (row.facts as Readonly<Record<string, Value>>)[name];
  const standing = (row.cells as Readonly<Record<string, Standing>> | undefined)?.[name] ?? row.standing;
  return value === null || value === undefined
    ? "–"
    : `${value}${typeof value === "number" && signs[standing] ? ` ${signs[standing]}` : ""}`;
}

/** The short name of a row is for look-ups, where another column says in words what the row is. */
const isForProgram = (name: string, all: readonly string[], { rows }: Table<object>): boolean =>
  name === "key" &&
  all.some(
    (other) =>
      other !== "key" &&
      other !== "unit" &&
      other !== "clause" &&
      rows.every(({ facts }) => typeof (facts as Readonly<Record<string, Value>>)[other] === "string"),
  );

/** A heading takes so much width at least, and has its words below each other where its column is narrower. */
const leastHeading = 10;

function grid(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widest = head.map((_, at) => Math.max(0, ...rows.map((row) => (row[at] ?? "").length)));
  const heads = head.map((text, at) => wrapped(text, Math.max(leastHeading, widest[at] ?? 0)));
  const widths = heads.map((parts, at) => Math.max(widest[at] ?? 0, ...parts.map((part) => part.length)));
  const height = Math.max(...heads.map(({ length }) => length));
  const headRows = Array.from({ length: height }, (_, line) => heads.map((parts) => parts[line] ?? ""));
  const rule = widths.slice(0, -1).map((width) => "-".repeat(width));
  return [...headRows, rule, ...rows]
    .map((row) =>
      row
        .map((cell, at) => cell.padEnd(widths[at] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}
