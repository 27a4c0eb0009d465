/** `wayfile check --watch`: checks again whenever a schedule or the settings below some folders change. */
import { type FSWatcher, watch } from "node:fs";
import { basename, dirname, resolve } from "node:path";
import { lookAt } from "../disk/read-now.ts";
import { reasonOf } from "../disk/reasons.ts";
import { isSchedule } from "../disk/refusals.ts";
import { settingsFile } from "../settings/settings.ts";
import { exit } from "./exit.ts";
import { refuse, sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";

/** An editor writes a file in several steps: they are one change. */
const quietFor = 150;

/** Runs `once` at first and after each change, until the person stops it or it is stopped itself. */
export async function watching(
  args: readonly string[],
  once: () => Promise<number>,
  terminal: Terminal,
): Promise<number> {
  let wake: () => void = () => {};
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stopped = false;
  let changed = false;
  const onChange = (name: string | null): void => {
    if (name !== null && !isSchedule(name) && basename(name) !== settingsFile) return;
    changed = true;
    clearTimeout(timer);
    timer = setTimeout(() => wake(), quietFor);
  };
  const watchers: FSWatcher[] = [];
  try {
    for (const folder of foldersOf(args, terminal.cwd)) {
      watchers.push(watch(folder, { recursive: true }, (_, name) => onChange(name)));
    }
  } catch (error) {
    for (const one of watchers) one.close();
    return refuse(`The folders cannot be watched: ${reasonOf(error)}`, terminal);
  }
  const release = terminal.onInterrupt(() => {
    stopped = true;
    wake();
  });
  try {
    for (;;) {
      changed = false;
      const code = await once();
      if (stopped || code === exit.interrupted) return code;
      terminal.err(sentences(["Watching for changes; Ctrl-C ends it."]));
      if (!changed) {
        await new Promise<void>((done) => {
          wake = done;
        });
      }
      if (stopped) return code;
    }
  } finally {
    release();
    clearTimeout(timer);
    for (const one of watchers) one.close();
  }
}

/** The folders of what was asked for, none inside another. */
function foldersOf(args: readonly string[], cwd: string): string[] {
  const folders = (args.length > 0 ? args : ["."]).map((arg) => {
    const path = resolve(cwd, arg);
    const stat = lookAt(path);
    if (!stat) return cwd;
    return stat.isDirectory() ? path : dirname(path);
  });
  return [...new Set(folders)].filter((one) => !folders.some((other) => one.startsWith(`${other}/`)));
}
