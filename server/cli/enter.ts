import { extname } from "node:path";
import { changedSegments, type Entered, enter, type Incoming } from "../entry/enter.ts";
import { readingsOfSheet } from "../entry/sheet-file.ts";
import { placeName } from "../entry/slots.ts";
import { readingsOfTable, type Table, type TableOptions } from "../entry/table.ts";
import { type Installation, installationsOf } from "../model/installation.ts";
import type { Separator } from "../papers/separators.ts";
import { entriesOfFile } from "../readings/entries.ts";
import { none } from "../reports/common/target.ts";
import { headingOf } from "../reports/schedule/heading.ts";
import { valuesOf } from "../reports/schedule/values.ts";
import { textOf } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import { lines } from "../text/terminal.ts";
import { fileOfText, gather, isNewer, type LoadedFile } from "../workspace/project.ts";
import { digestOf } from "./digest.ts";
import { exit } from "./exit.ts";
import { Disk } from "./files.ts";
import { refuse } from "./say.ts";
import type { Terminal } from "./terminal.ts";
import { replaceFile } from "./write.ts";

export interface EnterCommandOptions {
  readonly board?: string;
  readonly on?: string;
  readonly with?: string;
  readonly by?: string;
  readonly column?: readonly string[];
  readonly decimal?: "point" | "comma";
  readonly separator?: Separator;
  readonly dates?: TableOptions["dates"];
  readonly dryRun?: true;
}

type Failure = { readonly failure: string };

/** `wayfile enter`: readings from a filled sheet or table into the schedule, as new dated blocks. */
export async function enterCommand(
  path: string,
  readings: string,
  options: EnterCommandOptions,
  terminal: Terminal,
): Promise<number> {
  const disk = new Disk(terminal.cwd);
  const root = disk.named(disk.path(path));
  if ("failure" in root) return refuse(`“${path}” cannot be read: ${root.failure}`, terminal);
  const { files } = gather(root, disk);
  if (files.some(isNewer))
    return refuse(`“${path}” is in a newer version of the language: nothing is entered.`, terminal);
  const [installation, ...others] = installationsOf(files);
  if (!installation) return refuse(none.failure, terminal);
  if (others.length > 0)
    return refuse("This file holds several installations: keep each in a file of its own to enter readings.", terminal);
  const read = await incomingOf(readings, installation, options, disk);
  if ("failure" in read) return refuse(`“${readings}”: ${read.failure}`, terminal);
  const entered = enter(installation, read.incoming, options.decimal === "comma" ? { comma: true } : {});
  const changes = changesOf(files, installation, entered);
  if ("failure" in changes) return refuse(changes.failure, terminal);
  if (!options.dryRun) {
    const failure = write(changes.files, disk);
    if (failure !== undefined) return refuse(failure, terminal);
  }
  const paths = changes.files.map(({ file }) => disk.shown(file.path));
  const base = "base" in read ? read.base : undefined;
  if (base && base !== digestOf(files))
    terminal.out(lines("The schedule has changed since the worksheet was made of it.\n"));
  terminal.out(lines(reportOf(entered, read, paths, options.dryRun === true)));
  return entered.misfits.length > 0 ? exit.errors : exit.clean;
}

interface ReadIn {
  readonly incoming: readonly Incoming[];
  readonly unchanged: number;
  /** Headings that no reading was taken from. */
  readonly passed: readonly string[];
  /** The state of the schedule a worksheet was made of. */
  readonly base?: string;
}

async function incomingOf(
  path: string,
  installation: Installation,
  options: EnterCommandOptions,
  disk: Disk,
): Promise<ReadIn | Failure> {
  if (extname(path).toLowerCase() === ".xlsx") {
    const bytes = disk.bytes(disk.path(path));
    if ("failure" in bytes) return bytes;
    const { tableOfWorkbook } = await import("../papers/tables.ts");
    return ofTable(await tableOfWorkbook(bytes), installation, options);
  }
  const text = disk.text(disk.path(path));
  if ("failure" in text) return text;
  if (!text.text.trimStart().startsWith("{")) {
    const { tableOfCsv } = await import("../papers/tables.ts");
    return ofTable(tableOfCsv(text.text, options.separator), installation, options);
  }
  const sheet = readingsOfSheet(text.text);
  return "failure" in sheet ? sheet : { incoming: sheet.incoming, unchanged: 0, passed: [], base: sheet.base };
}

function ofTable(table: Table | Failure, installation: Installation, options: EnterCommandOptions): ReadIn | Failure {
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

interface Change {
  readonly file: LoadedFile;
  readonly text: string;
}

/** The new texts of the files, once it is sure that all that was recorded is still there as it was. */
function changesOf(
  files: readonly LoadedFile[],
  installation: Installation,
  { blocks }: Entered,
): { readonly files: readonly Change[] } | Failure {
  const fileOf = (segment: Segment) => files.find(({ document }) => document.segments.includes(segment));
  const changed = new Map(
    changedSegments(installation, blocks, (segment) => fileOf(segment)?.document).map(({ segment, text }) => [
      segment,
      text,
    ]),
  );
  const places = new Set(blocks.map(({ place }) => placeName(place)));
  if (changed.size < places.size) return { failure: "A place to write into was not found: nothing is written." };
  const touched = files.filter(({ document }) => document.segments.some((segment) => changed.has(segment)));
  const changes = touched.map(
    (file): Change => ({
      file,
      text: file.document.segments.map((segment) => changed.get(segment) ?? segment.text).join(""),
    }),
  );
  const lost = changes.find(({ file, text }) => !holdsAll(file, fileOfText(file.path, text)));
  return lost
    ? { failure: "Writing would change what is recorded: nothing is written. Please report this." }
    : { files: changes };
}

/** Every fact that was there is there and says the same, and no line is broken that was not. */
function holdsAll(before: LoadedFile, after: LoadedFile): boolean {
  const said = (file: LoadedFile): string[] => entriesOfFile(file.model).map(({ at, meaning }) => `${at}\n${meaning}`);
  const left = new Set(said(after));
  const problems = ({ model }: LoadedFile): number => [...model.problems.values()].flat().length;
  return said(before).every((one) => left.has(one)) && problems(after) <= problems(before);
}

function write(changes: readonly Change[], disk: Disk): string | undefined {
  for (const { file, text } of changes) {
    const read = disk.text(file.path);
    if ("failure" in read) return `“${disk.shown(file.path)}” cannot be read again: ${read.failure}`;
    if (read.text !== textOf(file.document)) return `“${disk.shown(file.path)}” has changed since it was read.`;
    const failure = replaceFile(file.path, (read.bom ? "\ufeff" : "") + text);
    if (failure !== undefined) return `“${disk.shown(file.path)}” cannot be written: ${failure}`;
  }
  return undefined;
}

const count = (number: number, one: string, many = `${one}s`): string => `${number} ${number === 1 ? one : many}`;

function reportOf(
  { blocks, fresh, known, misfits, assumed }: Entered,
  { unchanged, passed }: ReadIn,
  paths: readonly string[],
  dry: boolean,
): string {
  const there = known + unchanged;
  const shown = dry
    ? blocks.flatMap(({ place, lines: block }) => [`${placeName(place)}:`, ...block.map((line) => `  ${line}`), ""])
    : [];
  const head =
    fresh === 0
      ? "No new reading is entered."
      : `${count(fresh, "reading")} in ${count(blocks.length, "new block")} ${dry ? "would be written" : "written"} to ${paths.join(", ")}.`;
  return [
    ...shown,
    head,
    ...(there > 0 ? [`${count(there, "reading is", "readings are")} recorded already.`] : []),
    ...assumed,
    ...(passed.length > 0 ? [`Columns that no reading was taken from: ${passed.join(", ")}.`] : []),
    ...(misfits.length > 0 ? ["", `Not entered (${misfits.length}):`] : []),
    ...misfits.map(({ source, why }) => `  ${source}: ${why}.`),
    "",
  ].join("\n");
}
