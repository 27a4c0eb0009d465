/** A file of readings from outside: a filled worksheet, a workbook, or a table of a meter. */
import type { ReadIn } from "../entry/change.ts";
import { readingsOfSheet } from "../entry/sheet-file.ts";
import { readingsOfTable, type Table, type TableOptions } from "../entry/table.ts";
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
  if ("workbook" in outside) {
    const { tableOfWorkbook } = await import("./tables.ts");
    return ofTable(await tableOfWorkbook(outside.workbook), installation, options);
  }
  if (!outside.text.trimStart().startsWith("{")) {
    const { tableOfCsv } = await import("./tables.ts");
    return ofTable(tableOfCsv(outside.text, options.separator), installation, options);
  }
  const sheet = readingsOfSheet(outside.text);
  return "failure" in sheet ? sheet : { incoming: sheet.incoming, unchanged: 0, passed: [], base: sheet.base };
}

function ofTable(table: Table | Failure, installation: Installation, options: IncomingOptions): ReadIn | Failure {
  if ("failure" in table) return table;
  const names = new Map<string, string>();
  for (const pair of options.column ?? []) {
    const at = pair.lastIndexOf("=");
    if (at <= 0) return { failure: `A column is named as in --column "Loop=Zs"; “${pair}” is not.` };
    names.set(pair.slice(0, at).trim(), pair.slice(at + 1).trim());
  }
  const own = valuesOf(installation);
  const { boards } = installation;
  return readingsOfTable(installation, table, {
    names,
    board: options.board ?? (boards.length === 1 ? boards[0]?.board.head.name : undefined),
    on: options.on,
    with: options.with?.split(/[\s,]+/) ?? [],
    by: options.by,
    dates: options.dates,
    own: { head: own.columns.map(headingOf), rows: own.rows },
  });
}
