/** Where a report goes: to standard output, or into a file that takes its place once it is whole. */
import { closeSync, openSync, renameSync, rmSync, writeSync } from "node:fs";
import { resolve } from "node:path";
import { lookAt } from "../disk/read-now.ts";
import { reasonOf } from "../disk/reasons.ts";
import type { TerminalText } from "../text/terminal.ts";
import type { Terminal } from "./terminal.ts";
import { openToWrite, refusedTarget } from "./write.ts";

export interface Sink {
  readonly out: (text: TerminalText) => void;
  /** Says why the report could not be written, if it could not. */
  readonly end: () => string | undefined;
  /** Ends it where the report is not whole: a file that was there stays as it was, and a sentence says so. */
  readonly drop: () => string | undefined;
}

export function sinkOf(file: string | undefined, terminal: Terminal): Sink {
  return file === undefined
    ? { out: terminal.out, end: () => undefined, drop: () => undefined }
    : intoFile(file, terminal.cwd);
}

function intoFile(file: string, cwd: string): Sink {
  const path = resolve(cwd, file);
  // A device or a pipe is written to; to put a file in its place would be the end of it.
  const isFile = lookAt(path)?.isFile() ?? true;
  const beside = isFile ? `${path}.${process.pid}.tmp` : path;
  const refused = refusedTarget(path);
  let failure = refused === undefined ? undefined : `“${file}” cannot be written: ${refused}`;
  const attempt = <T>(action: () => T): T | undefined => {
    if (failure !== undefined) return undefined;
    try {
      return action();
    } catch (error) {
      failure = `“${file}” cannot be written: ${reasonOf(error)}`;
      return undefined;
    }
  };
  const handle = attempt(() => (isFile ? openSync(beside, "wx") : openToWrite(path)));
  return {
    out: ({ text }) => {
      if (handle !== undefined) attempt(() => writeSync(handle, text));
    },
    end: () => {
      if (handle === undefined) return failure;
      attempt(() => closeSync(handle));
      if (!isFile) return failure;
      attempt(() => renameSync(beside, path));
      if (failure !== undefined) rmSync(beside, { force: true });
      return failure;
    },
    drop: () => {
      if (handle === undefined || !isFile) return failure;
      attempt(() => closeSync(handle));
      rmSync(beside, { force: true });
      return failure ?? `“${file}” was not written.`;
    },
  };
}
