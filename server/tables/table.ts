import { Memo } from "../memo/memo.ts";
import { lasting, type Source, type Sourced, type Standing, usualShare } from "./source.ts";

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
  /** By what share a cell from memory can be wrong; `usualShare` where it is not stated. */
  readonly share?: number;
}

interface Declaration<F> extends Omit<Table<F>, "rows" | "notes" | "quotedOn"> {
  /** Standing of every row that does not state its own. */
  readonly standing: Standing;
  /** Made when they are first looked at: a schedule needs few of all tables. */
  readonly rows: () => readonly (F | Row<F>)[];
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
  const made = new Memo<typeof rows, readonly Row<F>[]>();
  const make = (): readonly Row<F>[] => rows().map((row) => (isRow(row) ? row : { facts: row, standing }));
  return {
    ...rest,
    notes,
    quotedOn,
    get rows() {
      return made.of(rows, make);
    },
  };
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

/** Rows that have some cells in common, and of these those that have one more, by its column and what stands in it. */
class Narrowed {
  readonly #rows: readonly Row<unknown>[];
  readonly #by = new Map<string, ReadonlyMap<unknown, Narrowed>>();

  constructor(rows: readonly Row<unknown>[]) {
    this.#rows = rows;
  }

  get first(): Row<unknown> | undefined {
    return this.#rows[0];
  }

  with(column: string, cell: unknown): Narrowed | undefined {
    let byCell = this.#by.get(column);
    if (!byCell) {
      byCell = this.#grouped(column);
      this.#by.set(column, byCell);
    }
    return byCell.get(cell);
  }

  #grouped(column: string): ReadonlyMap<unknown, Narrowed> {
    const groups = Map.groupBy(this.#rows, ({ facts }) => (facts as Readonly<Record<string, Value>>)[column]);
    return new Map([...groups].map(([cell, rows]) => [cell, new Narrowed(rows)]));
  }
}

const wholeTables = new Memo<Table<unknown>, Narrowed>();

const allRows = ({ rows }: Table<unknown>): Narrowed => new Narrowed(rows);

/** The first row whose cells equal all those asked for. */
export function rowOf<F>(of: Table<F>, wanted: Partial<F>): Row<F> | undefined {
  let rows: Narrowed | undefined = wholeTables.of(of, allRows);
  for (const column in wanted) rows = rows?.with(column, wanted[column]);
  return rows?.first as Row<F> | undefined;
}

const sources = new Memo<object, Map<PropertyKey, Source>>();

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
  const share = standing === "memory" ? shareOf(of, row, column) : 0;
  return {
    ref,
    standing,
    ...(row.note === undefined ? {} : { note: row.note }),
    ...(share > 0 ? { remembered: [{ figure: figureOf(of, row, ref), share }] } : {}),
  };
}

/**
 * The share by which a cell from memory can be wrong: what its table states, or less where the nearest printed figures
 * of the same column, in the smaller and the larger size, leave it less room. 0 where it holds no number.
 */
function shareOf<F>(of: Table<F>, row: Row<F>, column: keyof F): number {
  const value = row.facts[column];
  if (typeof value !== "number" || value <= 0) return 0;
  const stated = of.share ?? usualShare;
  const room = [-1, 1].map((way) => printedBeside(of, row, column, way));
  const [below, above] = room;
  if (below === undefined || above === undefined) return stated;
  const [low, high] = [Math.min(below, above), Math.max(below, above)];
  // A cell outside its printed neighbours is no row of an ordered column, which then bounds nothing.
  if (value < low || value > high || low <= 0) return stated;
  return Math.min(stated, Math.max(value / low, high / value) - 1);
}

/** The nearest figure of the column that was seen in print, in the rows of the same kind before or after. */
function printedBeside<F>({ rows, units }: Table<F>, from: Row<F>, column: keyof F, way: number): number | undefined {
  const words = (Object.keys(units) as (keyof F)[]).filter((key) => typeof from.facts[key] === "string");
  const alike = (row: Row<F>) => words.every((key) => row.facts[key] === from.facts[key]);
  for (let at = rows.indexOf(from) + way; at >= 0 && at < rows.length; at += way) {
    const row = rows[at];
    const value = row?.facts[column];
    if (row && alike(row) && typeof value === "number" && (row.cells?.[column] ?? row.standing) !== "memory")
      return value;
  }
  return undefined;
}

/** What a person would look up: the table and the row, by its words and its first figure. */
function figureOf<F>({ units }: Table<F>, { facts }: Row<F>, ref: string): string {
  const keys = Object.keys(units) as (keyof F)[];
  const words = keys.filter((key) => typeof facts[key] === "string").map((key) => String(facts[key]));
  const first = keys.find((key) => typeof facts[key] === "number");
  const size = first === undefined ? [] : [`${facts[first]} ${units[first]}`.trim()];
  return [ref, [...words, ...size].join(" ")].filter((part) => part !== "").join(", ");
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
