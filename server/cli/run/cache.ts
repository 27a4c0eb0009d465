/**
 * Results of earlier runs, each under what it follows from: the contents of its files and this very program. An entry
 * that is damaged, or of another program, is as good as none. It lies with the person who runs the program and never in
 * a repository, which could come from a stranger and bring its own results along.
 */
import { hash } from "node:crypto";
import {
  closeSync,
  existsSync,
  fstatSync,
  futimesSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { dayLength } from "../../text/days.ts";
import type { Keeping, Made } from "./made.ts";

/** Entries nobody asked for in so many days are taken away. */
const kept = 14 * dayLength;

export interface CachePlace {
  /** The folder of this program's caches. */
  readonly folder: string;
  /** What tells this program from any other version of it. */
  readonly program: string;
}

export class Cache {
  readonly #folder: string;
  #broken = false;

  constructor({ folder, program }: CachePlace) {
    this.#folder = join(folder, program);
  }

  has(content: string, making: Keeping): boolean {
    return existsSync(this.#pathOf(content, making));
  }

  /** The result of an earlier run, if there is a whole one. */
  read<K extends Keeping>(content: string, making: K): Made[K] | undefined {
    let handle: number | undefined;
    try {
      handle = openSync(this.#pathOf(content, making), "r");
      const text = readFileSync(handle, "utf8");
      const end = text.indexOf("\n");
      const body = text.slice(end + 1);
      if (text.slice(0, end) !== sumOf(content, body)) return undefined;
      keepAlive(handle);
      return JSON.parse(body);
    } catch {
      return undefined;
    } finally {
      if (handle !== undefined) closeSync(handle);
    }
  }

  /** In one step, so that two runs at once and an interruption leave whole entries. What cannot be kept is done without. */
  write<K extends Keeping>(content: string, making: K, result: Made[K]): void {
    if (this.#broken) return;
    const path = this.#pathOf(content, making);
    const beside = `${path}.${process.pid}.tmp`;
    try {
      mkdirSync(join(path, ".."), { recursive: true, mode: 0o700 });
      const body = JSON.stringify(result);
      writeFileSync(beside, `${sumOf(content, body)}\n${body}`, { mode: 0o600 });
      renameSync(beside, path);
    } catch {
      this.#broken = true;
      remove(beside);
    }
  }

  /** What one text comes to lies side by side: what is found in it, and how a register lists it. */
  #pathOf(content: string, making: Keeping): string {
    const name = content.slice(2);
    return join(this.#folder, content.slice(0, 2), making === "findings" ? name : `${name}.${making}`);
  }
}

const sumOf = (content: string, body: string): string => hash("sha256", `${content}\n${body}`, "hex");

function remove(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // What stands in the way of writing stands in the way of this.
  }
}

/** An entry that is read shows by its time that it is in use; once a day is enough. */
function keepAlive(handle: number): void {
  const now = Date.now();
  if (now - fstatSync(handle).mtimeMs > dayLength) futimesSync(handle, now / 1000, now / 1000);
}

/** Takes away what nobody asked for in a long time, other versions' entries included; at most once a day. */
export function tidy({ folder }: CachePlace): void {
  const mark = join(folder, "tidied");
  try {
    const before = statSync(mark, { throwIfNoEntry: false })?.mtimeMs ?? 0;
    const now = Date.now();
    if (now - before < dayLength) return;
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    writeFileSync(mark, "");
    utimesSync(mark, now / 1000, now / 1000);
    for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
      const path = join(entry.parentPath, entry.name);
      if (entry.isFile() && now - statSync(path).mtimeMs > kept) rmSync(path, { force: true });
    }
  } catch {
    // A cache that cannot be tidied is no reason to say anything: the run has been done.
  }
}
