import { lineEdits } from "../format/edits.ts";
import { format, formatDocument } from "../format/format.ts";
import { type Document, textOf } from "../syntax/document.ts";
import { ceiling, decode } from "../text/decode.ts";
import { applyEdits, lineStarts, positionOf, type TextEdit } from "../text/lines.ts";
import { counted } from "../text/words.ts";
import { fileOfText, isNewer, type LoadedFile } from "../workspace/project.ts";
import { upgraded } from "../workspace/upgrade.ts";
import { exit } from "./exit.ts";
import { Disk } from "./files.ts";
import { Houses } from "./house.ts";
import { patchOf } from "./patch.ts";
import { refuse, sentences } from "./say.ts";
import { findFiles } from "./search.ts";
import type { Terminal } from "./terminal.ts";
import { Timing } from "./timing.ts";
import { replaceFile } from "./write.ts";

export interface FmtOptions {
  readonly check?: boolean;
  /** Writes present names of words and checks for former ones. */
  readonly upgrade?: boolean;
  readonly timing?: boolean;
  readonly diff?: boolean;
}

const mark = "\ufeff";

/** `wayfile fmt`: lays files out, or says which are not. */
export async function fmt(args: readonly string[], options: FmtOptions, terminal: Terminal): Promise<number> {
  if (args.includes("-")) return await fmtInput(args, options, terminal);
  const timing = new Timing(terminal, options.timing ?? false);
  const { files, folders, failures } = await findFiles(args, terminal.cwd, new Houses(terminal.cwd, terminal.today()));
  timing.phase("search", `${files.size} files`);
  const disk = new Disk(terminal.cwd);
  for (const folder of folders) disk.admit(folder);
  const failed = [...failures];
  let changed = 0;
  let conflicted = 0;
  for (const path of files.keys()) {
    const shown = disk.shown(path);
    const result = fmtFile(path, disk, options);
    if ("failure" in result) failed.push(`“${shown}” ${result.failure}`);
    else {
      if (result.conflicted) conflicted++;
      if (result.unread || result.conflicted)
        terminal.err(sentences([result.conflicted ? conflictNote(shown) : unreadNote(shown)]));
      if (result.edits.length > 0) {
        changed++;
        if (options.diff) terminal.data(patchOf(shown, result.text, applyEdits(result.text, result.edits)));
        else terminal.out(sentences([`${shown}  ${linesText(result.text, result.edits)}`]));
      }
    }
  }
  timing.phase("lay out");
  timing.end();
  const checkOnly = options.check || options.diff;
  const sums = sentences([summary(files.size, changed, conflicted, checkOnly ?? false)]);
  // A patch is for a program.
  if (files.size > 0 && options.diff) terminal.err(sums);
  else if (files.size > 0) terminal.out(sums);
  terminal.err(sentences(failed));
  if (failed.length > 0) return exit.failed;
  return checkOnly && changed + conflicted > 0 ? exit.errors : exit.clean;
}

async function fmtInput(args: readonly string[], options: FmtOptions, terminal: Terminal): Promise<number> {
  if (args.length > 1) {
    return refuse("Standard input (-) is laid out by itself: leave out the other paths.", terminal);
  }
  const read = decode(await terminal.input(ceiling));
  if ("failure" in read) {
    return refuse(`Standard input cannot be read: ${read.failure}`, terminal);
  }
  const file = fileOfText("", read.text);
  if (isNewer(file)) {
    terminal.data((read.bom ? mark : "") + read.text);
    return refuse(`Standard input ${newer}`, terminal);
  }
  const formatted = laidOut(file.document, options.upgrade ?? false);
  const { unread, conflicted } = unreadIn(file);
  if (conflicted) terminal.err(sentences([conflictNote("(standard input)")]));
  else if (unread) terminal.err(sentences([unreadNote("(standard input)")]));
  if (options.check) return formatted || conflicted ? exit.errors : exit.clean;
  if (options.diff) {
    if (formatted) terminal.data(patchOf("(standard input)", read.text, formatted.text));
    return formatted || conflicted ? exit.errors : exit.clean;
  }
  terminal.data((read.bom ? mark : "") + (formatted?.text ?? read.text));
  return exit.clean;
}

interface Laid {
  readonly text: string;
  readonly edits: readonly TextEdit[];
  /** Whether there are lines that could not be read, and so were left alone. */
  readonly unread: boolean;
  /** Whether some of them are the marks of a merge conflict. */
  readonly conflicted: boolean;
}

function fmtFile(path: string, disk: Disk, { check, diff, upgrade }: FmtOptions): Laid | { readonly failure: string } {
  const read = disk.text(path);
  if ("failure" in read) return { failure: `cannot be read: ${read.failure}` };
  const { text, bom } = read;
  const file = fileOfText(path, text);
  if (isNewer(file)) return { failure: newer };
  const formatted = laidOut(file.document, upgrade ?? false);
  if (formatted && !check && !diff) {
    const reason = replaceFile(path, (bom ? mark : "") + formatted.text);
    if (reason) return { failure: `cannot be written: ${reason}` };
  }
  return { text, edits: formatted?.edits ?? [], ...unreadIn(file) };
}

/** The text in the one style, and in the present words if that is asked; nothing where it is so already. */
function laidOut(document: Document, upgrade: boolean): Pick<Laid, "text" | "edits"> | undefined {
  if (!upgrade) return formatDocument(document);
  const text = textOf(document);
  const present = upgraded(text);
  if (present === text) return formatDocument(document);
  const after = format(present)?.text ?? present;
  return { text: after, edits: lineEdits(text, after, 0) };
}

function unreadIn({ model }: LoadedFile): Pick<Laid, "unread" | "conflicted"> {
  const problems = [...model.problems.values()].flat();
  return { unread: problems.length > 0, conflicted: problems.some(({ check }) => check === "conflict") };
}

const newer = "is in a newer version of the language and is left as it is.";

const unreadNote = (shown: string): string =>
  `“${shown}” has lines that cannot be read; what depends on them is left as it is. “wayfile check” shows them.`;

const conflictNote = (shown: string): string =>
  `“${shown}” has the marks of a merge conflict: keep what is right, remove the marks, and format it then.`;

function summary(files: number, changed: number, conflicted: number, checkOnly: boolean): string {
  if (changed === 0 && conflicted > 0) return `${counted(files, "file")}, ${conflicted} with conflicts.`;
  if (changed === 0) return `${counted(files, "file")}, already formatted.`;
  return `${counted(files, "file")}, ${changed} ${checkOnly ? "not formatted" : "reformatted"}.`;
}

const mostRanges = 6;

/** The lines that change, as they are numbered in the file before. */
function linesText(text: string, edits: readonly TextEdit[]): string {
  const starts = lineStarts(text);
  const ranges = edits.map(({ start, end }) => {
    const from = positionOf(starts, start).line + 1;
    const to = positionOf(starts, Math.max(start, end - 1)).line + 1;
    return from === to ? `${from}` : `${from} to ${to}`;
  });
  const shown = ranges.slice(0, mostRanges).join(", ");
  const rest = ranges.length - mostRanges;
  return `${/^\d+$/.test(ranges.join()) ? "line" : "lines"} ${shown}${rest > 0 ? ` and ${counted(rest, "more place")}` : ""}`;
}
