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
  const changes = new Changes();
  const failure = changes.watch(foldersOf(args, terminal.cwd));
  if (failure !== undefined) return refuse(`The folders cannot be watched: ${failure}`, terminal);
  let stopped = false;
  const release = terminal.onInterrupt(() => {
    stopped = true;
    changes.wake();
  });
  try {
    for (;;) {
      changes.forget();
      const code = await once();
      if (stopped || code === exit.interrupted) return code;
      terminal.err(sentences(["Watching for changes; Ctrl-C ends it."]));
      await changes.next();
      if (stopped) return code;
    }
  } finally {
    release();
    changes.end();
  }
}

/** Changes of schedules and settings below some folders. */
class Changes {
  readonly #watchers: FSWatcher[] = [];
  #timer: ReturnType<typeof setTimeout> | undefined;
  #changed = false;
  #wake: () => void = () => {};

  /** The reason why it cannot be done, if there is one. */
  watch(folders: readonly string[]): string | undefined {
    try {
      for (const folder of folders)
        this.#watchers.push(watch(folder, { recursive: true }, (_, name) => this.#onChange(name)));
      return undefined;
    } catch (error) {
      this.end();
      return reasonOf(error);
    }
  }

  #onChange(name: string | null): void {
    if (name !== null && !isSchedule(name) && basename(name) !== settingsFile) return;
    this.#changed = true;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.wake(), quietFor);
  }

  forget(): void {
    this.#changed = false;
  }

  /** Waits for a change, unless there has been one since `forget`. */
  async next(): Promise<void> {
    if (this.#changed) return;
    await new Promise<void>((done) => {
      this.#wake = done;
    });
  }

  wake(): void {
    this.#wake();
  }

  end(): void {
    clearTimeout(this.#timer);
    for (const one of this.#watchers) one.close();
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
