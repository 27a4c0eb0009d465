/**
 * The real file system, lent to the engine. A file is known by the first path it was met under: a link that leads back
 * to it is the same file, so circles of links end.
 */
import { dirname, relative, resolve, sep } from "node:path";
import { Grounds, realPathOf } from "../disk/grounds.ts";
import { readBytes, readNamed, readUsed } from "../disk/read-now.ts";
import type { Text } from "../text/decode.ts";
import { fileOfText, type LoadedFile, type Sources } from "../workspace/project.ts";

export class Disk implements Sources {
  readonly #cwd: string;
  readonly #known = new Map<string, string>();
  readonly #loaded = new Map<string, LoadedFile | { readonly failure: string }>();
  readonly #grounds = new Grounds();

  constructor(cwd: string) {
    this.#cwd = cwd;
    this.#grounds.admit(cwd);
  }

  /** A folder that was asked for: all in it may be read. */
  admit(folder: string): void {
    this.#grounds.admit(folder);
  }

  /** The path a file is known by. */
  path(named: string): string {
    return this.#canonical(slashes(resolve(this.#cwd, named)));
  }

  #canonical(path: string): string {
    const real = realPathOf(path);
    const known = this.#known.get(real);
    if (known !== undefined) return known;
    this.#known.set(real, path);
    return path;
  }

  /** Either kind of slash is one, and two of them name no other computer. What may not be read is not looked at. */
  resolve(from: string, use: string): string {
    const path = slashes(resolve(dirname(from), use.replaceAll("\\", "/").replace(/^\/{2,}/, "/")));
    return this.#grounds.holds(path) ? this.#canonical(path) : path;
  }

  file(path: string): LoadedFile | { readonly failure: string } {
    return this.#loadedBy(readUsed, path);
  }

  /** A file that the person named. What else lies in its folder may be used. */
  named(path: string): LoadedFile | { readonly failure: string } {
    this.#grounds.admit(dirname(path));
    return this.#loadedBy(readNamed, path);
  }

  #loadedBy(
    readText: (path: string, grounds: Grounds) => Text,
    path: string,
  ): LoadedFile | { readonly failure: string } {
    const before = this.#loaded.get(path);
    if (before) return before;
    const read = readText(path, this.#grounds);
    const file = "failure" in read ? read : fileOfText(path, read.text);
    this.#loaded.set(path, file);
    return file;
  }

  /** A file that was named, as it is on the disk now. */
  text(path: string): Text {
    this.#grounds.admit(dirname(path));
    return readNamed(path, this.#grounds);
  }

  /** The bytes of a file that was named and is no text. */
  bytes(path: string): Uint8Array | { readonly failure: string } {
    return readBytes(path);
  }

  /** Lets a text stand for what is on the disk. */
  lend(path: string, text: string): void {
    this.#grounds.admit(dirname(path));
    this.#loaded.set(path, fileOfText(path, text));
  }

  /** The path as it is shown: from the current folder, with slashes on every system. */
  shown(path: string): string {
    return shownPath(this.#cwd, path);
  }
}

export const shownPath = (cwd: string, path: string): string => slashes(relative(cwd, path)) || ".";

const slashes = (path: string): string => (sep === "/" ? path : path.replaceAll(sep, "/"));
