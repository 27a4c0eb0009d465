import { availableParallelism } from "node:os";
import { basename, relative } from "node:path";
import { reasonOf } from "../disk/reasons.ts";
import { lines, type TerminalText } from "../text/terminal.ts";

import { placeOfCache } from "./cache-place.ts";
import { exit } from "./exit.ts";
import type { CachePlace } from "./run/cache.ts";

/** What a command meets of the outside besides files: where it stands, what it is fed, and where it writes. */
export interface Terminal {
  readonly cwd: string;
  readonly colour: boolean;
  /** How many columns lines may have; missing where nobody reads them on a screen. */
  readonly width: number | undefined;
  /** How this program is called here, for suggestions that can be copied. */
  readonly program: string;
  /** The file of this program, for what starts it later. */
  readonly script: string;
  out(text: TerminalText): void;
  err(text: TerminalText): void;
  /** A schedule for a program to read: sign by sign into a pipe or a file, and harmless where a screen would obey it. */
  data(text: string): void;
  /** A file that is no text. */
  bytes(content: Uint8Array): void;
  /** Standard input until its end, or until more than `most` bytes have come. */
  input(most: number): Promise<Uint8Array>;
  /** The day, ISO 8601, by the calendar on the wall. */
  today(): string;
  /** Milliseconds of a clock that only runs forwards. */
  now(): number;
  /** Whether a person sees standard error as it comes. */
  readonly interactive: boolean;
  /** How far long work is; it stands on standard error until the next one, and nothing takes it away. */
  status(text: TerminalText | undefined): void;
  /** Calls back when the person wants to stop, until the function that is returned is called. A second time ends all. */
  onInterrupt(stop: () => void): () => void;
  /** Lets what else is waiting happen. */
  breathe(): Promise<void>;
  /** The program that a thread runs, and how many threads there is room for; none where all is done in this one. */
  readonly threads: { readonly program: string; readonly count: number } | undefined;
  /** Told that a schedule was checked: what is compiled by then is worth keeping. */
  checked?(): void;
  /** Where results may be kept from one run to the next, and what distinguishes this program from another version of it. */
  readonly cache: CachePlace | undefined;
}

/**
 * Colour is for people: on a terminal that can show it, or where FORCE_COLOR wants it all the same, and never against
 * NO_COLOR. What the library of colours asks instead takes `FORCE_COLOR=0` for yes, and a file that CI writes for a screen.
 */
export function wantsColour(stream: { isTTY?: boolean }, { NO_COLOR, FORCE_COLOR, TERM }: NodeJS.ProcessEnv): boolean {
  if (NO_COLOR) return false;
  if (FORCE_COLOR) return FORCE_COLOR !== "0" && FORCE_COLOR !== "false";
  return stream.isTTY === true && TERM !== "dumb";
}

/** A terminal says how wide it is; `COLUMNS` says it for a pipe too. */
function widthOf({ columns }: { columns?: number }, { COLUMNS = "" }: NodeJS.ProcessEnv): number | undefined {
  return /^[1-9]\d{1,3}$/.test(COLUMNS) ? Number(COLUMNS) : columns;
}

/**
 * The real terminal. What could not be written makes the code that of a command that failed, whatever it found.
 * `program`: the file that runs, which threads run too.
 */
export function processTerminal(program: string): Terminal {
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (isEarlyLeave(error) || process.exitCode === exit.failed) return;
    process.exitCode = exit.failed;
    write(process.stderr, lines(`The output cannot be written: ${reasonOf(error)}\n`).text);
  });
  process.stderr.on("error", (error: NodeJS.ErrnoException) => {
    if (!isEarlyLeave(error)) process.exitCode = exit.failed;
  });
  const status = new StatusLine();
  return {
    cwd: process.cwd(),
    colour: wantsColour(process.stdout, process.env),
    width: widthOf(process.stdout, process.env),
    program: programName(process.argv[1] ?? ""),
    script: process.argv[1] ?? "",
    out: ({ text }) => status.aside(process.stdout, text),
    err: ({ text }) => status.aside(process.stderr, text),
    data: (text) => write(process.stdout, process.stdout.isTTY ? lines(text).text : text),
    bytes: (content) => write(process.stdout, content),
    input: readAll,
    today: () => new Date().toLocaleDateString("sv-SE"),
    now: () => performance.now(),
    interactive: process.stderr.isTTY === true,
    status: (text) => status.show(text?.text ?? ""),
    onInterrupt,
    breathe: () => new Promise((resolve) => setImmediate(resolve)),
    threads: { program, count: availableParallelism() },
    cache: placeOfCache(program, process.env),
  };
}

/** Ctrl-C, and what a host sends that ends a job. */
const interruptions = ["SIGINT", "SIGTERM"] as const;

function onInterrupt(stop: () => void): () => void {
  for (const signal of interruptions) process.once(signal, stop);
  return () => {
    for (const signal of interruptions) process.off(signal, stop);
  };
}

/** `wayfile` where it is installed; inside this package npm finds it; or else Node with the path of the bundle. */
function programName(script: string): string {
  if (process.env.npm_command !== undefined) return "npm exec -- wayfile";
  return basename(script) === "wayfile" ? "wayfile" : `node ${relative(process.cwd(), script) || script}`;
}

/** A reader that leaves early, as `head` does, is no failure: the rest is not wanted. */
const isEarlyLeave = ({ code }: NodeJS.ErrnoException): boolean => code === "EPIPE";

function write(stream: NodeJS.WriteStream, text: string | Uint8Array): void {
  if (text.length > 0 && stream.writable) stream.write(text);
}

/** The line at the end of standard error that says how far long work is. */
class StatusLine {
  #shown = "";

  /** On a terminal it takes the place of the one before; in a file it is a line of its own, and clearing is nothing. */
  show(text: string): void {
    if (text === this.#shown) return;
    const { stderr } = process;
    if (stderr.isTTY) write(stderr, `${clearLine}${text}`);
    else if (text !== "") write(stderr, `${text}\n`);
    this.#shown = text;
  }

  /** What else is written does not begin behind it. */
  aside(stream: NodeJS.WriteStream, text: string): void {
    const isUnder = text !== "" && this.#shown !== "" && process.stderr.isTTY;
    if (isUnder) write(process.stderr, clearLine);
    write(stream, text);
    if (isUnder) write(process.stderr, this.#shown);
  }
}

const clearLine = "\r\u001b[K";

async function readAll(most: number): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of process.stdin) {
    chunks.push(chunk);
    size += chunk.length;
    if (size > most) break;
  }
  return Buffer.concat(chunks);
}
