/** A file of readings from outside: a filled worksheet, a workbook, or a table of a meter. */
import type { ReadIn } from "../entry/change.ts";
import { type ForeignColumn, foreignColumns } from "../entry/columns.ts";
import { readingsOfSheet } from "../entry/sheet-file.ts";
import { keyOf, knownColumns, readingsOfTable, type Table, type TableOptions } from "../entry/table.ts";
import type { Installation } from "../model/installation.ts";
import { headingOf } from "../reports/schedule/heading.ts";
import { valuesOf } from "../reports/schedule/values.ts";
import type { Separator } from "./separators.ts";

type Failure = { readonly failure: string };

export interface IncomingOptions {
  readonly board?: string;
  readonly on?: string;
  readonly with?: string;
  readonly by?: string;
  /** `heading=word` for a heading that is none of ours. */
  readonly column?: readonly string[];
  readonly separator?: Separator;
  readonly dates?: TableOptions["dates"];
}

/** The bytes of a workbook, or the text of any other file. */
export type Outside = { readonly workbook: Uint8Array } | { readonly text: string };

export async function incomingOf(
  outside: Outside,
  installation: Installation,
  options: IncomingOptions,
): Promise<ReadIn | Failure> {
  const table = await tableIn(outside, options);
  if (table) return ofTable(table, installation, options);
  const sheet = readingsOfSheet("text" in outside ? outside.text : "");
  return "failure" in sheet ? sheet : { incoming: sheet.incoming, unchanged: 0, passed: [], base: sheet.base };
}

/** Nothing where it is the file that a sheet to fill in gives back. */
async function tableIn(outside: Outside, { separator }: IncomingOptions): Promise<Table | Failure | undefined> {
  if ("workbook" in outside) return await (await import("./tables.ts")).tableOfWorkbook(outside.workbook);
  if (outside.text.trimStart().startsWith("{")) return undefined;
  return (await import("./tables.ts")).tableOfCsv(outside.text, separator);
}

/** Columns of a table from outside whose meaning is not stated, with what each most likely holds. */
export async function foreignIn(
  outside: Outside,
  installation: Installation,
  options: IncomingOptions,
): Promise<{ readonly columns: readonly ForeignColumn[]; readonly dated: boolean }> {
  const table = await tableIn(outside, options);
  const told = namesOf(options.column ?? []);
  if (!table || "failure" in table || "failure" in told) return { columns: [], dated: true };
  const own = valuesOf(installation);
  const columns = foreignColumns(
    table,
    told.names,
    knownColumns(installation, { head: own.columns.map(headingOf), rows: own.rows }),
  );
  const keys = table.head.cells.map((heading) => told.names.get(heading.trim()) ?? keyOf(heading));
  return { columns, dated: keys.some((key) => key === "on" || key.endsWith("-on")) };
}

function namesOf(pairs: readonly string[]): { readonly names: ReadonlyMap<string, string> } | Failure {
  const names = new Map<string, string>();
  for (const pair of pairs) {
    const at = pair.lastIndexOf("=");
    if (at <= 0) return { failure: `A column is named as in --column "Loop=Zs"; “${pair}” is not.` };
    names.set(pair.slice(0, at).trim(), pair.slice(at + 1).trim());
  }
  return { names };
}

function ofTable(table: Table | Failure, installation: Installation, options: IncomingOptions): ReadIn | Failure {
  if ("failure" in table) return table;
  const told = namesOf(options.column ?? []);
  if ("failure" in told) return told;
  const own = valuesOf(installation);
  const { boards } = installation;
  return readingsOfTable(installation, table, {
    names: told.names,
    board: options.board ?? (boards.length === 1 ? boards[0]?.board.head.name : undefined),
    on: options.on,
    with: options.with?.split(/[\s,]+/) ?? [],
    by: options.by,
    dates: options.dates,
    own: { head: own.columns.map(headingOf), rows: own.rows },
  });
}
