import type { Standing } from "../../server/tables/source.ts";
import type { Table } from "../../server/tables/table.ts";

/** A table, the columns that are compared, and what is printed there, a line for each row. */
export type Printed = readonly [table: Table<object>, columns: string, list: string];

const letters: Readonly<Record<Standing, string>> = {
  printed: "S",
  quoted: "C",
  computed: "=",
  practice: "P",
  memory: "M",
};

interface Row {
  readonly facts: Record<string, unknown>;
  readonly standing: Standing;
  readonly cells?: Record<string, Standing | undefined>;
}

/** The rows of a table as such a list writes them: each number with how it is known, a dash for an empty cell. */
export const kept = (table: Table<object>, columns: string): string[] =>
  table.rows.map((row) =>
    columns
      .split(" ")
      .map((column) => cell(row as Row, column))
      .join(" "),
  );

export const listed = (list: string): string[] =>
  list
    .trim()
    .split("\n")
    .map((line) => line.trim());

function cell({ facts, standing, cells }: Row, column: string): string {
  const value = facts[column];
  if (value === null) return "-";
  return typeof value === "number"
    ? `${value}${letters[cells?.[column] ?? standing]}`
    : String(value).replaceAll(" ", "-");
}
