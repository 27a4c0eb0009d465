import { ceiling, decode } from "../text/decode.ts";
import { applyEdits, lineStarts, positionOf, type TextEdit } from "../text/lines.ts";
import { counted } from "../text/words.ts";
import { fileOfText } from "../workspace/loaded-file.ts";
import { findAsked } from "./asked.ts";
import { exit } from "./exit.ts";
import { contentOfText, Disk } from "./files.ts";
import { Houses, refuseSettings } from "./house.ts";
import { type Layout, layoutOf } from "./layout.ts";
import { namesFrom } from "./names.ts";
import { patchOf } from "./patch.ts";
import { tidy } from "./run/cache.ts";
import { Pace } from "./run/pace.ts";
import { apart, type Task } from "./run/plan.ts";
import { type Ran, run } from "./run/run.ts";
import { refuse, sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";
import { Timing } from "./timing.ts";
import { changedMeanwhile, clearStale, replaceUnchanged } from "./write.ts";

export interface FmtOptions {
  readonly check?: boolean;
  /** Writes present names of words and checks for former ones. */
  readonly upgrade?: boolean;
  readonly timing?: boolean;
  readonly diff?: boolean;
  readonly cache: boolean;
  readonly threads?: number;
}

const mark = "\ufeff";

/** `wayfile fmt`: lays files out, or says which are not. */
export async function fmt(args: readonly string[], options: FmtOptions, terminal: Terminal): Promise<number> {
  if (args.includes("-")) return await fmtInput(args, options, terminal);
  const stop = new AbortController();
  const release = terminal.onInterrupt(() => stop.abort());
  try {
    return await fmtUntil(stop.signal, args, options, terminal);
  } finally {
    release();
  }
}

async function fmtUntil(
  signal: AbortSignal,
  args: readonly string[],
  options: FmtOptions,
  terminal: Terminal,
): Promise<number> {
  const timing = new Timing(terminal, options.timing ?? false);
  const pace = new Pace(terminal, false);
  const disk = new Disk(terminal.cwd);
  const houses = new Houses(terminal.cwd, terminal.today());
  const tasks: Task[] = [];
  const found = await findAsked(
    { args },
    { disk, terminal, houses },
    {
      read: (path, plain) => addTask(path, plain, disk, tasks),
      goesOn: (all) => {
        const breath = pace.breathe(() => `${counted(all, "file")} found, reading`);
        return breath ? breath.then(() => !signal.aborted) : !signal.aborted;
      },
    },
  );
  // Settings that say something else than was meant leave out something else.
  if (houses.failures.length > 0) return refuseSettings(houses, terminal, "formatted");
  const files = found.paths.length;
  timing.phase("search", `${files} files`);
  const done = new Done(options, disk, terminal);
  const cache = options.cache ? terminal.cache : undefined;
  const detail = { nameOf: namesFrom(terminal.cwd).nameOf, making: options.upgrade ? "upgrade" : "layout" } as const;
  const { program, count = 1 } = terminal.threads ?? {};
  const threads = { room: count, wanted: options.threads };
  for await (const ran of run(apart(tasks), disk, { cwd: terminal.cwd, detail, cache, program, signal, threads })) {
    done.add(ran);
    if (done.files < files) await pace.breathe(() => `${done.files} of ${counted(files, "file")} looked at`);
  }
  pace.end();
  if (cache) tidy(cache);
  if (!done.isLook) clearStale(tasks.map(({ files: [path] }) => path));
  timing.phase("lay out");
  timing.end();
  const failures = [...found.failures, ...done.failures];
  if (signal.aborted) return interrupted(files - done.files, failures, done, terminal);
  // A patch is for a program.
  if (files > 0) terminal[options.diff ? "err" : "out"](sentences([done.summary]));
  terminal.err(sentences(failures));
  if (failures.length > 0) return exit.failed;
  return done.isLook && done.changed + done.conflicted > 0 ? exit.errors : exit.clean;
}

/** A file to be laid out. It is read again when its turn comes. */
function addTask(path: string, plain: boolean, disk: Disk, tasks: Task[]): { readonly failure: string } | undefined {
  const bytes = plain ? disk.bytesOfPlain(path) : undefined;
  const text = bytes ? undefined : disk.namedText(path);
  if (text && "failure" in text) return text;
  tasks.push({ files: [path], size: bytes?.length ?? Buffer.byteLength(text?.text ?? "") });
  disk.release(path);
  return undefined;
}

function interrupted(left: number, failures: readonly string[], { files }: Done, terminal: Terminal): number {
  const sentence = `Interrupted: ${counted(files, "file")} looked at, ${left} left as they were.`;
  terminal.err(sentences([...failures, sentence]));
  return exit.interrupted;
}

/** What has been done so far, file by file. */
class Done {
  files = 0;
  changed = 0;
  conflicted = 0;
  readonly failures: string[] = [];
  /** Whether nothing is written. */
  readonly isLook: boolean;
  readonly #isPatch: boolean;
  readonly #disk: Disk;
  readonly #terminal: Terminal;

  constructor({ check = false, diff = false }: FmtOptions, disk: Disk, terminal: Terminal) {
    this.isLook = check || diff;
    this.#isPatch = diff;
    this.#disk = disk;
    this.#terminal = terminal;
  }

  add({ task, result }: Ran<"layout" | "upgrade">): void {
    const [path] = task.files;
    this.files++;
    const failure = "failure" in result ? result.failure : "isNewer" in result ? newer : this.#add(path, result);
    if (failure !== undefined) this.failures.push(`“${this.#disk.shown(path)}” ${failure}`);
    this.#disk.release(path);
  }

  /** Gives the end of a sentence where it could not be done. */
  #add(path: string, { content, edits, unread, conflicted }: Layout): string | undefined {
    const shown = this.#disk.shown(path);
    const before = edits.length > 0 ? this.#disk.namedText(path) : undefined;
    if (before && "failure" in before) return `cannot be read: ${before.failure}`;
    const failure =
      before && (contentOfText(before) === content ? this.#write(path, before.text, edits) : changedMeanwhile);
    if (failure !== undefined) return `cannot be written: ${failure}`;
    if (conflicted) this.conflicted++;
    if (unread) this.#terminal.err(sentences([conflicted ? conflictNote(shown) : unreadNote(shown)]));
    if (!before) return undefined;
    this.changed++;
    if (this.#isPatch) this.#terminal.data(patchOf(shown, before.text, applyEdits(before.text, edits)));
    else this.#terminal.out(sentences([`${shown}  ${linesText(before.text, edits)}`]));
    return undefined;
  }

  #write(path: string, before: string, edits: readonly TextEdit[]): string | undefined {
    return this.isLook ? undefined : replaceUnchanged(path, this.#disk, before, applyEdits(before, edits));
  }

  get summary(): string {
    const files = counted(this.files, "file");
    const failed = this.failures.length;
    if (this.changed === 0 && failed > 0)
      return failed === this.files
        ? `${files}, none laid out.`
        : `${files}, ${failed} not laid out, the rest already formatted.`;
    if (this.changed === 0 && this.conflicted > 0) return `${files}, ${this.conflicted} with conflicts.`;
    if (this.changed === 0) return `${files}, already formatted.`;
    return `${files}, ${this.changed} ${this.isLook ? "not formatted" : "reformatted"}.`;
  }
}

async function fmtInput(args: readonly string[], options: FmtOptions, terminal: Terminal): Promise<number> {
  if (args.length > 1) {
    return refuse("Standard input (-) is formatted by itself: leave out the other paths.", terminal);
  }
  const read = decode(await terminal.input(ceiling));
  if ("failure" in read) {
    return refuse(`Standard input cannot be read: ${read.failure}`, terminal);
  }
  const layout = layoutOf(fileOfText("", read.text), contentOfText(read), options.upgrade ?? false);
  if ("isNewer" in layout) {
    terminal.data((read.bom ? mark : "") + read.text);
    return refuse(`Standard input ${newer}`, terminal);
  }
  const { edits, unread, conflicted } = layout;
  const isChanged = edits.length > 0;
  const after = isChanged ? applyEdits(read.text, edits) : read.text;
  if (conflicted) terminal.err(sentences([conflictNote("(standard input)")]));
  else if (unread) terminal.err(sentences([unreadNote("(standard input)")]));
  if (options.check) return isChanged || conflicted ? exit.errors : exit.clean;
  if (options.diff) {
    if (isChanged) terminal.data(patchOf("(standard input)", read.text, after));
    return isChanged || conflicted ? exit.errors : exit.clean;
  }
  terminal.data((read.bom ? mark : "") + after);
  return exit.clean;
}

const newer = "is in a newer version of the language and is left as it is.";

const unreadNote = (shown: string): string =>
  `“${shown}” has lines that cannot be read; what depends on them is left as it is. “wayfile check” shows them.`;

const conflictNote = (shown: string): string =>
  `“${shown}” has the marks of a merge conflict: keep what is right, remove the marks, and format it then.`;

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
