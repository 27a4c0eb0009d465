/** A CSV file as a table, as it stands: nothing is guessed, and no text becomes a number. */
import { parse } from "csv-parse/sync";
import type { Table } from "../entry/table.ts";
import { unharmed } from "./csv.ts";
import { type Separator, separatorNames, separators } from "./separators.ts";

export type ReadTable = Table | { readonly failure: string };

export function tableOfCsv(text: string, separator?: Separator): ReadTable {
  const sign = separator === undefined ? separatorOf(text) : separators[separator];
  if (sign === undefined)
    return {
      failure: `Its first line does not show what separates its columns: say it with --separator (${separatorNames.join(", ")}).`,
    };
  if (text.includes("�")) return { failure: "Signs of it were lost when it was saved: save it as UTF-8." };
  try {
    const rows: { record: string[]; info: { lines: number } }[] = parse(text, {
      bom: true,
      delimiter: sign,
      relax_column_count: true,
      skip_empty_lines: true,
      info: true,
      trim: true,
    }) as never;
    const [head, ...rest] = rows.map(({ record, info }) => ({ line: info.lines, cells: record.map(unharmed) }));
    return head ? { head, rows: rest } : { failure: "It is empty." };
  } catch (error) {
    return { failure: `It cannot be read as CSV: ${error instanceof Error ? error.message : String(error)}` };
  }
}

/** The one sign that separates the headings; nothing where there are several or none. */
function separatorOf(text: string): string | undefined {
  const first = (/[^\r\n]+/.exec(text)?.[0] ?? "").replace(/"[^"]*"/g, "");
  const found = Object.values(separators).filter((sign) => first.includes(sign));
  return found.length === 1 ? found[0] : undefined;
}
