import { dirname, extname } from "node:path";
import { type Change, changesOf, enteredReport } from "../entry/change.ts";
import { guessOf } from "../entry/columns.ts";
import { enter } from "../entry/enter.ts";
import { installationsOf } from "../model/installation.ts";
import { digestOf } from "../papers/digest.ts";
import { type IncomingOptions, incomingOf, type Outside } from "../papers/incoming.ts";
import { none } from "../reports/common/target.ts";
import { textOf } from "../syntax/document.ts";
import { lines } from "../text/terminal.ts";
import { gather } from "../workspace/gather.ts";
import { isNewer } from "../workspace/language-version.ts";
import type { LoadedFile } from "../workspace/loaded-file.ts";
import { exit } from "./exit.ts";
import { Disk } from "./files.ts";
import { Houses } from "./house.ts";
import { refuse } from "./say.ts";
import type { Terminal } from "./terminal.ts";
import { replaceFile } from "./write.ts";

export interface EnterCommandOptions extends IncomingOptions {
  readonly decimal?: "point" | "comma";
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
  const outside = outsideOf(readings, disk);
  const houses = new Houses(terminal.cwd, terminal.today());
  // What the command line states overrides what the repository has agreed on.
  const column = [...(houses.in(dirname(disk.path(path)))?.settings.columns ?? []), ...(options.column ?? [])];
  const read = "failure" in outside ? outside : await incomingOf(outside, installation, { ...options, column });
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
  terminal.out(lines(enteredReport(entered, read, paths, options.dryRun === true)));
  terminal.out(lines(columnHint(read.passed)));
  return entered.misfits.length > 0 ? exit.errors : exit.clean;
}

/** What a heading that is none of ours points to: it is offered, and never taken by itself. */
function columnHint(passed: readonly string[]): string {
  const named = passed.flatMap((heading) => {
    const guess = guessOf(heading);
    return guess === undefined ? [] : [`--column "${heading}=${guess}"`];
  });
  return named.length === 0 ? "" : `If these columns hold readings, add ${named.join(" ")}\n`;
}

function outsideOf(path: string, disk: Disk): Outside | Failure {
  if (extname(path).toLowerCase() === ".xlsx") {
    const bytes = disk.bytes(disk.path(path));
    return "failure" in bytes ? bytes : { workbook: bytes };
  }
  return disk.text(disk.path(path));
}

function write(changes: readonly Change<LoadedFile>[], disk: Disk): string | undefined {
  for (const { file, text } of changes) {
    const read = disk.text(file.path);
    if ("failure" in read) return `“${disk.shown(file.path)}” cannot be read again: ${read.failure}`;
    if (read.text !== textOf(file.document)) return `“${disk.shown(file.path)}” has changed since it was read.`;
    const failure = replaceFile(file.path, (read.bom ? "\ufeff" : "") + text);
    if (failure !== undefined) return `“${disk.shown(file.path)}” cannot be written: ${failure}`;
  }
  return undefined;
}
