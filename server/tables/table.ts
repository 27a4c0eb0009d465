import { lasting, type Source, type Sourced, type Standing } from "./source.ts";

/** What a cell may hold; null where the source prints a dash or the value is not known. */
export type Value = number | string | null;
type Facts<F> = { readonly [K in keyof F]: Value };

/** One row with its standing; cells that are known better or worse than the rest of the row say so themselves. */
export interface Row<F> {
  readonly facts: F;
  readonly standing: Standing;
  readonly cells?: { readonly [K in keyof F]?: Standing };
  readonly note?: string;
}

/** A table of a standard or of guidance, as it is held here. */
export interface Table<F> {
  /** Short lasting name of ours. */
  readonly id: string;
  readonly title: string;
  /** The standard and table that a person would look up. */
  readonly ref: string;
  /** The edition the numbers are stated to. */
  readonly edition: string;
  /** Where a column is printed in another edition or table than the rest. */
  readonly refs?: { readonly [K in keyof F]?: string };
  readonly applies: string;
  readonly units: { readonly [K in keyof F]: string };
  readonly rows: readonly Row<F>[];
  readonly notes: readonly string[];
  /** How many public pages were found that quote its values. Their titles stand beside the rows, and are not shipped. */
  readonly quotedOn: number;
}

interface Declaration<F> extends Omit<Table<F>, "rows" | "notes" | "quotedOn"> {
  /** Standing of every row that does not state its own. */
  readonly standing: Standing;
  readonly rows: readonly (F | Row<F>)[];
  readonly notes?: readonly string[];
  readonly quotedOn?: number;
}

/** Declares a table. Plain rows take the table's standing; `quoted(…)`, `computed(…)`, … give a row its own. */
export function table<F extends Facts<F>>({
  standing,
  rows,
  notes = [],
  quotedOn = 0,
  ...rest
}: Declaration<F>): Table<F> {
  return { ...rest, notes, quotedOn, rows: rows.map((row) => (isRow(row) ? row : { facts: row, standing })) };
}

function isRow<F>(row: F | Row<F>): row is Row<F> {
  return typeof row === "object" && row !== null && "facts" in row;
}

type Mark = <F extends Facts<F>>(facts: F, cells?: { readonly [K in keyof F]?: Standing }, note?: string) => Row<F>;

function mark(standing: Standing): Mark {
  return (facts, cells, note) => ({
    facts,
    standing,
    ...(cells === undefined ? {} : { cells }),
    ...(note === undefined ? {} : { note }),
  });
}

export const printed = mark("printed");
export const quoted = mark("quoted");
export const computed = mark("computed");
export const practice = mark("practice");
export const memory = mark("memory");

/** Rows of a table by the cells of one set of columns. */
type Index = Map<string, Row<unknown>>;

const indices = new WeakMap<object, Map<string, Index>>();

/** The first row whose cells equal all those asked for. */
export function rowOf<F>(of: Table<F>, wanted: Partial<F>): Row<F> | undefined {
  const columns = Object.keys(wanted) as (keyof F & string)[];
  const index = indexOf(of, columns) as ReadonlyMap<string, Row<F>>;
  return index.get(keyOf(wanted, columns));
}

function indexOf<F>(of: Table<F>, columns: readonly (keyof F & string)[]): Index {
  let ofTable = indices.get(of);
  if (!ofTable) {
    ofTable = new Map();
    indices.set(of, ofTable);
  }
  const name = columns.join(" ");
  const before = ofTable.get(name);
  if (before) return before;
  const index: Index = new Map();
  for (const row of of.rows) {
    const key = keyOf(row.facts, columns);
    if (!index.has(key)) index.set(key, row);
  }
  ofTable.set(name, index);
  return index;
}

/** Cells as one text; a number and the same in letters are two. */
function keyOf<F>(facts: F | Partial<F>, columns: readonly (keyof F)[]): string {
  let key = "";
  for (const column of columns) {
    const value: unknown = facts[column];
    key += typeof value === "string" ? `"${value}"` : `${value};`;
  }
  return key;
}

const sources = new WeakMap<object, Map<PropertyKey, Source>>();

/** Where a cell comes from: the same object each time. */
export function sourceOf<F>(of: Table<F>, row: Row<F>, column: keyof F): Source {
  let ofRow = sources.get(row);
  if (!ofRow) {
    ofRow = new Map();
    sources.set(row, ofRow);
  }
  const before = ofRow.get(column);
  if (before) return before;
  const source = lasting(sourceOfCell(of, row, column));
  ofRow.set(column, source);
  return source;
}

function sourceOfCell<F>(of: Table<F>, row: Row<F>, column: keyof F): Source {
  const standing = row.cells?.[column] ?? row.standing;
  const ref = of.refs?.[column] ?? of.ref;
  return row.note === undefined ? { ref, standing } : { ref, standing, note: row.note };
}

/** A cell with its source. */
export function cellOf<F, K extends keyof F>(of: Table<F>, row: Row<F>, column: K): Sourced<F[K]> {
  return { value: row.facts[column], source: sourceOf(of, row, column) };
}

/** A number looked up by the cells of its row; undefined when there is no such row, or it holds no number there. */
export function numberCell<F>(of: Table<F>, wanted: Partial<F>, column: keyof F): Sourced<number> | undefined {
  const row = rowOf(of, wanted);
  const value = row?.facts[column];
  return row !== undefined && typeof value === "number" ? { value, source: sourceOf(of, row, column) } : undefined;
}

/** A number a table is known to hold. Its absence is a slip in the table, never in a schedule, so it throws. */
export function known<F>(of: Table<F>, wanted: Partial<F>, column: keyof F): Sourced<number> {
  const found = numberCell(of, wanted, column);
  if (found === undefined) throw new Error(`${of.id} holds no ${String(column)} for ${JSON.stringify(wanted)}`);
  return found;
}
