/**
 * The real file system, lent to the engine. A file is known by the first path it was met under: a link that leads back
 * to it is the same file, so circles of links end.
 */
import { closeSync, fstatSync, openSync, readSync, realpathSync } from "node:fs";
import { dirname, relative, resolve, sep } from "node:path";
import { fileOfText, type LoadedFile, type Sources } from "../workspace/project.ts";
import { ceiling, decode, type Text, tooLarge } from "./decode.ts";

export class Disk implements Sources {
  readonly #cwd: string;
  readonly #known = new Map<string, string>();
  readonly #loaded = new Map<string, LoadedFile | { readonly failure: string }>();

  constructor(cwd: string) {
    this.#cwd = cwd;
  }

  /** The path a file is known by. */
  path(...parts: readonly string[]): string {
    const path = slashes(resolve(this.#cwd, ...parts));
    const real = realPath(path);
    const known = this.#known.get(real);
    if (known !== undefined) return known;
    this.#known.set(real, path);
    return path;
  }

  resolve(from: string, use: string): string {
    return this.path(dirname(from), use);
  }

  file(path: string): LoadedFile | { readonly failure: string } {
    const before = this.#loaded.get(path);
    if (before) return before;
    const read = readText(path);
    const file = "failure" in read ? read : fileOfText(path, read.text);
    this.#loaded.set(path, file);
    return file;
  }

  /** Lets a text stand for what is on the disk. */
  lend(path: string, text: string): void {
    this.#loaded.set(path, fileOfText(path, text));
  }

  /** The path as it is shown: from the current folder, with slashes on every system. */
  shown(path: string): string {
    return shownPath(this.#cwd, path);
  }
}

export const shownPath = (cwd: string, path: string): string => slashes(relative(cwd, path)) || ".";

const slashes = (path: string): string => (sep === "/" ? path : path.replaceAll(sep, "/"));

function realPath(path: string): string {
  try {
    return realpathSync.native(path);
  } catch {
    return path;
  }
}

export function readText(path: string): Text {
  const bytes = readBytes(path);
  return "failure" in bytes ? bytes : decode(bytes);
}

/** Reads in pieces, since the size of a pipe is not known beforehand. */
function readBytes(path: string): Uint8Array | { readonly failure: string } {
  let handle: number | undefined;
  try {
    handle = openSync(path, "r");
    const stat = fstatSync(handle);
    if (stat.isDirectory()) return { failure: "it is a folder." };
    if (stat.size > ceiling) return { failure: tooLarge(stat.size) };
    const pieces: Uint8Array[] = [];
    for (let size = 0; size <= ceiling; ) {
      const piece = Buffer.alloc(Math.max(stat.size - size, 0) + 4096);
      const count = readSync(handle, piece);
      if (count === 0) break;
      pieces.push(piece.subarray(0, count));
      size += count;
    }
    return Buffer.concat(pieces);
  } catch (error) {
    return { failure: reasonOf(error) };
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file.",
  ENOTDIR: "there is no such file.",
  EISDIR: "it is a folder.",
  EACCES: "permission is denied.",
  EPERM: "permission is denied.",
  EROFS: "the disk is read-only.",
  ENOSPC: "the disk is full.",
  ELOOP: "its links lead in a circle.",
  ENAMETOOLONG: "its name is too long.",
};

/** What the system says of a file, as the end of a sentence. */
export function reasonOf(error: unknown): string {
  const { code = "", message = String(error) } = error as NodeJS.ErrnoException;
  return reasons[code] ?? `${message.replace(/\.$/, "")}.`;
}
