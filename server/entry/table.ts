/**
 * Readings out of a table: a filled schedule with its own headings, or what a meter exported, with its headings named as
 * ours. A row is a circuit, or a single test where a column names the test and another holds the result.
 */
import type { Installation } from "../model/installation.ts";
import type { Incoming } from "./blocks.ts";
import { placeName, type Slot, type SlotPlace, slotName, slotsOf } from "./slots.ts";
import { sameWord } from "./value.ts";

/** A row of texts with the number of its line in the file. */
interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface Table {
  readonly head: TableRow;
  readonly rows: readonly TableRow[];
}

export interface TableOptions {
  /** Our names for headings, and for tests named in cells, of a table that is not ours. */
  readonly names?: ReadonlyMap<string, string>;
  /** The board where the table has no column for it. */
  readonly board?: string | undefined;
  readonly on?: string | undefined;
  readonly with?: readonly string[];
  readonly by?: string | undefined;
  /** How days are written: `dd/mm/yyyy` or `mm/dd/yyyy`; as 2026-03-05 if left out. */
  readonly dates?: "dd/mm/yyyy" | "mm/dd/yyyy" | undefined;
  /** What the schedule itself would put into the table: cells that still say it were not filled in. */
  readonly own?: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

type TableReadings =
  | { readonly incoming: readonly Incoming[]; readonly unchanged: number; readonly passed: readonly string[] }
  | { readonly failure: string };

/** A heading without the unit in brackets behind it; one of ours in capitals or without them is ours. */
export function keyOf(heading: string): string {
  const key = heading.replace(/\s*\([^)]*\)\s*$/, "").trim();
  return inAnyCase.get(key.toLowerCase()) ?? key;
}

/** What a column of a table may hold, by the name the schedule's own table has for it. */
export const columnNames: readonly string[] = [
  ...["way", "board", "on", "with", "by", "R1+R2", "R2", "r1", "rn", "r2"],
  ...["L-N", "L-E", "N-E", "N-N", "L-L", "test-voltage", "polarity", "Zs", "Zdb", "Ipf", "PSCC", "PEFC"],
  ...["rcd-time", "rcd-button", "afdd-button", "trip-current", "leakage", "voltage", "phase-sequence", "function"],
  ...["test", "result"],
];

/** Not r2, which with a capital is another resistance, nor those beside it. */
const inAnyCase = new Map(columnNames.filter((name) => !/^r.$/i.test(name)).map((name) => [name.toLowerCase(), name]));

const results = new Set([
  ...["r1", "rn", "r2", "R1+R2", "R2", "L-N", "L-E", "N-E", "N-N", "L-L", "polarity", "Zs", "Zdb", "Ipf"],
  ...["rcd-time", "rcd-button", "afdd-button", "test-voltage", "function", "phase-sequence"],
]);
const about = new Set([
  "board",
  "way",
  "dead-on",
  "dead-with",
  "live-on",
  "live-with",
  "on",
  "with",
  "by",
  "test",
  "result",
]);

export function readingsOfTable(installation: Installation, table: Table, options: TableOptions = {}): TableReadings {
  const renamed = (text: string): string => options.names?.get(text.trim()) ?? keyOf(text);
  const keys = table.head.cells.map(renamed);
  const twice = keys.find((key, at) => (results.has(key) || about.has(key)) && keys.indexOf(key) !== at);
  if (twice !== undefined)
    return { failure: `Two columns are headed ${twice}: one of them has to go, or be named otherwise.` };
  if (!keys.includes("way"))
    return {
      failure: `No column is headed “way”: name the one that holds the circuit, as in --column "${table.head.cells[0] ?? "Circuit"}=way".`,
    };
  const reader = new RowReader(installation, keys, options, renamed);
  for (const row of table.rows) reader.read(row);
  const passed = table.head.cells.filter((_, at) => !reader.knows(keys[at] ?? ""));
  return { incoming: reader.incoming, unchanged: reader.unchanged, passed };
}

/** Whether a column of this name holds something of the schedule's own table, or a reading. */
export function knownColumns(installation: Installation, own: TableOptions["own"]): (key: string) => boolean {
  const reader = new RowReader(installation, [], own ? { own } : {}, keyOf);
  const heads = new Set(own?.head.map(keyOf));
  return (key) => reader.knows(key) || heads.has(key);
}

class RowReader {
  readonly incoming: Incoming[] = [];
  unchanged = 0;
  readonly #slots: ReadonlyMap<string, readonly Slot[]>;
  readonly #keys: readonly string[];
  readonly #options: TableOptions;
  readonly #renamed: (text: string) => string;
  readonly #own: ReadonlyMap<string, Readonly<Record<string, string>>>;
  /** Readings that have no column of ours, by the line they are written on: `leakage`, `rcd 1x pulsating`, `at S1 R2`. */
  readonly #further: ReadonlySet<string>;

  constructor(
    installation: Installation,
    keys: readonly string[],
    options: TableOptions,
    renamed: (text: string) => string,
  ) {
    const slots = slotsOf(installation);
    this.#slots = Map.groupBy(slots, ({ place }) => placeName(place));
    this.#further = new Set(slots.map(headingOf));
    this.#keys = keys;
    this.#options = options;
    this.#renamed = renamed;
    this.#own = ownCells(options.own);
  }

  knows(key: string): boolean {
    return this.#isResult(key) || about.has(key) || [...this.#own.values()].some((cells) => key in cells);
  }

  #isResult(key: string): boolean {
    return results.has(key) || this.#further.has(asHeading(key));
  }

  read({ line, cells }: TableRow): void {
    const cell = (key: string): string => (cells[this.#keys.indexOf(key)] ?? "").trim();
    const way = cell("way");
    const board = cell("board") || (this.#options.board ?? "");
    if (way === "" && cells.every((text) => text.trim() === "")) return;
    const before = this.#own.get(`${board}|${way}`) ?? {};
    const long = cell("test") === "" ? undefined : this.#renamed(cell("test"));
    const changed = (long === undefined ? this.#keys.filter((key) => this.#isResult(key)) : [long]).flatMap((key) => {
      const text = long === undefined ? cell(key) : cell("result");
      if (text === "") return [];
      if (long === undefined && sameCell(text, before[key])) {
        if (text !== "N/A" && key !== "test-voltage") this.unchanged++;
        return [];
      }
      return [{ key, text }];
    });
    const pairs = changed.some(({ key }) => /^[LN]\d?-[LNE]\d?$/.test(key));
    const voltage = long === undefined ? cell("test-voltage") : "";
    // A voltage by itself is no reading; beside new ones it says what they were read at.
    const all = [
      ...changed.filter(({ key }) => key !== "test-voltage"),
      ...(pairs && voltage !== "" ? [{ key: "test-voltage", text: voltage }] : []),
    ];
    for (const { key, text } of all) this.#add({ line, key, text, board, way, cell, before });
  }

  #add({ line, key, text, board, way, cell, before }: CellRead): void {
    const { place, slot, block } = this.#slotFor(board, way, key, cell("rcd-sensitivity"));
    const dayKey = cell("on") === "" ? `${block}-on` : "on";
    const usedKey = cell("with") === "" ? `${block}-with` : "with";
    const given = cell(dayKey);
    const on = given === "" || given === before[dayKey] ? (this.#options.on ?? "") : isoDay(given, this.#options.dates);
    const used = cell(usedKey);
    this.incoming.push({
      source: `line ${line}, ${key}`,
      place,
      slot,
      text,
      ...(on === "" ? {} : { on }),
      with: used === "" ? (this.#options.with ?? []) : used.split(/[\s,]+/),
      ...(cell("by") || this.#options.by ? { by: cell("by") || this.#options.by } : {}),
    });
  }

  #slotFor(board: string, way: string, key: string, sensitivity: string): Found {
    const block = deadKeys.has(key) ? "dead" : "live";
    const further = results.has(key) ? undefined : this.#furtherSlot(board, way, key);
    if (further) return further;
    if (way === "supply") return { place: {}, slot: `live ${key}`, block: "live" };
    if (way === "board") {
      const line = key === "Zs" ? "Zdb" : key;
      const named = key === "polarity" ? "live polarity" : slotOfKey(key, block, line);
      return { place: { board }, slot: named, block: named.startsWith("live") ? "live" : "dead" };
    }
    if (key === "rcd-time" || key === "rcd-button") return this.#rcdSlot(placeOfRow(board, way), key, sensitivity);
    return { place: placeOfRow(board, way).place, slot: slotOfKey(key, block, key), block };
  }

  #rcdSlot({ place, name }: RowPlace, key: "rcd-time" | "rcd-button", sensitivity: string): Found {
    const word = key === "rcd-time" ? "rcd" : "test-button";
    const begins = name === undefined ? [word] : [`${word} ${name}`, `${word} ${quotedName(name)}`];
    const among = (this.#slots.get(placeName(place)) ?? []).filter(
      ({ line }) =>
        begins.some((begin) => line === begin || line.startsWith(`${begin} `)) &&
        (word !== "rcd" || line.endsWith(" 1x")),
    );
    // Of several RCDs of one way, that of the rating which stands in the row.
    const rated = among.find(({ line }) => sensitivity !== "" && line.includes(`${sensitivity} mA`));
    const found = rated ?? among[0];
    const slot = found ? slotName(found) : `live ${word}${sensitivity === "" ? "" : ` ${sensitivity} mA`}`;
    return { place, slot, block: "live" };
  }

  /** A reading that is named by its line. `supply` in the column “way” is the origin. */
  #furtherSlot(board: string, way: string, key: string): Found | undefined {
    const place: SlotPlace = way === "supply" ? {} : way === "board" ? { board } : { board, way };
    const heading = asHeading(key);
    const slot = this.#slots.get(placeName(place))?.find((one) => headingOf(one) === heading);
    return slot && { place, slot: slotName(slot), block: slot.block };
  }
}

/** Of an RCD the rating need not stand in a heading: one column is of many circuits. */
const headingOf = ({ line, label }: Slot): string =>
  [line.replace(/^(rcd .*?)\d+(?:\.\d+)? mA /, "$1"), ...(label === "" ? [] : [label])].join(" ");

/** `rcd-time pulsating` is `rcd 1x pulsating`, and `rcd-time 5x` says its multiple. */
const asHeading = (key: string): string =>
  key
    .replace(/^[LN]\d?-[LNE]\d?$/, "insulation $&")
    .replace(/^rcd-time(?= |$)/, /\dx/.test(key) ? "rcd" : "rcd 1x")
    .replace(/^(rcd .*?)\d+(?:\.\d+)? mA /, "$1");

interface CellRead {
  readonly line: number;
  readonly key: string;
  readonly text: string;
  readonly board: string;
  readonly way: string;
  readonly cell: (key: string) => string;
  readonly before: Readonly<Record<string, string>>;
}

interface Found {
  readonly place: SlotPlace;
  readonly slot: string;
  readonly block: "dead" | "live";
}

const deadKeys = new Set([
  "r1",
  "rn",
  "r2",
  "R1+R2",
  "R2",
  "L-N",
  "L-E",
  "N-E",
  "N-N",
  "L-L",
  "polarity",
  "test-voltage",
]);

/** What a row is of, and the RCD there that is meant. */
interface RowPlace {
  readonly place: SlotPlace;
  readonly name: string | undefined;
}

function placeOfRow(board: string, way: string): RowPlace {
  const shared = /^(?:rcd\s+(.+)|main-switch)$/.exec(way);
  if (shared) return { place: { board }, name: shared[1] };
  const [, ofWay = way, point] = /^(.+?)\s+(?:at\s+(.+)|rcd)$/.exec(way) ?? [];
  return { place: { board, way: ofWay }, name: point === undefined ? undefined : `at ${point}` };
}

/** `rcd east` with its name in quotes, `at "S 3"`. */
const quotedName = (name: string): string => name.replace(/^(at )?(.*)$/, '$1"$2"');

function slotOfKey(key: string, block: "dead" | "live", line: string): string {
  if (["r1", "rn", "r2"].includes(key)) return `dead ends ${key}`;
  if (/^[LN]-[LNE]$/.test(key)) return `dead insulation ${key}`;
  if (key === "test-voltage") return "dead insulation at";
  return `${block} ${line}`;
}

function ownCells(own: TableOptions["own"]): Map<string, Readonly<Record<string, string>>> {
  const keys = own?.head.map(keyOf) ?? [];
  return new Map(
    (own?.rows ?? []).map((row) => {
      const cells = Object.fromEntries(keys.map((key, at) => [key, row[at] ?? ""]));
      return [`${cells.board}|${cells.way}`, cells];
    }),
  );
}

/** A spreadsheet drops zeros at the end of a figure. */
const sameCell = (text: string, before: string | undefined): boolean =>
  before !== undefined &&
  (text === before ||
    sameWord(text, before) ||
    (before !== "" && Number.isFinite(Number(before)) && Number(text) === Number(before)));

/** A day in the order that was stated; anything else stays as it is, and is refused with its text. */
function isoDay(text: string, order: TableOptions["dates"]): string {
  const [, first = "", second = "", year = ""] = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/.exec(text) ?? [];
  if (year === "" || order === undefined) return text;
  const [day, month] = order === "dd/mm/yyyy" ? [first, second] : [second, first];
  return `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
}
