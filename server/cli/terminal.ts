import { basename, relative } from "node:path";
import { reasonOf } from "../disk/reasons.ts";
import { lines, type TerminalText } from "../text/terminal.ts";

import { exit } from "./exit.ts";

/** What a command meets of the outside besides files: where it stands, what it is fed, and where it writes. */
export interface Terminal {
  readonly cwd: string;
  readonly colour: boolean;
  /** How this program is called here, for suggestions that can be copied. */
  readonly program: string;
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
}

/** Colour is for people: on a terminal that can show it, and never against NO_COLOR. */
export function wantsColour(stream: { isTTY?: boolean }, { NO_COLOR, TERM }: NodeJS.ProcessEnv): boolean {
  return stream.isTTY === true && !NO_COLOR && TERM !== "dumb";
}

/** The real terminal. What could not be written makes the code that of a command that failed, whatever it found. */
export function processTerminal(): Terminal {
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (isEarlyLeave(error) || process.exitCode === exit.failed) return;
    process.exitCode = exit.failed;
    write(process.stderr, lines(`The output cannot be written: ${reasonOf(error)}\n`).text);
  });
  process.stderr.on("error", (error: NodeJS.ErrnoException) => {
    if (!isEarlyLeave(error)) process.exitCode = exit.failed;
  });
  return {
    cwd: process.cwd(),
    colour: wantsColour(process.stdout, process.env),
    program: programName(process.argv[1] ?? ""),
    out: ({ text }) => write(process.stdout, text),
    err: ({ text }) => write(process.stderr, text),
    data: (text) => write(process.stdout, process.stdout.isTTY ? lines(text).text : text),
    bytes: (content) => write(process.stdout, content),
    input: readAll,
    today: () => new Date().toLocaleDateString("sv-SE"),
    now: () => performance.now(),
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
