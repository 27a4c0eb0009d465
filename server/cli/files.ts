/**
 * The real file system, lent to the engine. A file is known by the first path it was met under: a link that leads back
 * to it is the same file, so circles of links end.
 */

import { hash } from "node:crypto";
import { basename, dirname, join, relative, resolve, sep } from "node:path";
import { Grounds, realPathOf } from "../disk/grounds.ts";
import { Glance, type NamedText, readBytes, readNamed, readUsed } from "../disk/read-now.ts";
import { isSchedule, refusedByPath } from "../disk/refusals.ts";
import { Engine } from "../model/engine.ts";
import type { Text } from "../text/decode.ts";
import type { Sources } from "../workspace/gather.ts";
import { fileOfText, type LoadedFile } from "../workspace/loaded-file.ts";

interface Known {
  /** What distinguishes its content from any other, or the reason why it could not be read. */
  readonly content: string;
  /** Missing where it was let go of. */
  text?: NamedText | undefined;
  file?: LoadedFile | undefined;
}

type Reader = (path: string, grounds: Grounds) => NamedText;

export class Disk implements Sources {
  readonly engine = new Engine();
  readonly #cwd: string;
  readonly #known = new Map<string, string>();
  readonly #texts = new Map<string, Known>();
  readonly #lent = new Map<string, string>();
  /** Paths that files use, each with the one its file is known by. Thousands of files use the same few. */
  readonly #resolved = new Map<string, string>();
  readonly #grounds: Grounds;
  #onlyLent = false;

  /** `folders`: what another disk admits, as it is. */
  constructor(cwd: string, folders?: readonly string[]) {
    this.#cwd = cwd;
    this.#grounds = new Grounds(folders);
    if (!folders) this.#grounds.admit(cwd);
  }

  /** The folders that may be read. */
  get folders(): readonly string[] {
    return this.#grounds.folders;
  }

  /** A folder that was asked for: all in it may be read. */
  admit(folder: string): void {
    this.#grounds.admit(folder);
  }

  /** The path a file is known by. */
  path(named: string): string {
    return this.#canonical(slashes(resolve(this.#cwd, named)));
  }

  readonly #realFolders = new Map<string, string>();

  /** The same of a file that its folder lists by that very name, and that is no link: only the folder is looked at. */
  plainPath(listed: string): string {
    const folder = dirname(listed);
    let real = this.#realFolders.get(folder);
    if (real === undefined) {
      real = realPathOf(folder);
      this.#realFolders.set(folder, real);
    }
    return this.#canonical(slashes(listed), real === folder ? listed : join(real, basename(listed)));
  }

  #canonical(path: string, real = realPathOf(path)): string {
    const known = this.#known.get(real);
    if (known !== undefined) return known;
    this.#known.set(real, path);
    return path;
  }

  /** Either kind of slash is one, and two of them name no other computer. What may not be read is not looked at. */
  resolve(from: string, use: string): string {
    const path = slashes(resolve(dirname(from), use.replaceAll("\\", "/").replace(/^\/{2,}/, "/")));
    const known = this.#resolved.get(path);
    if (known !== undefined) return known;
    const found = this.#grounds.holds(path) ? this.#canonical(path) : path;
    this.#resolved.set(path, found);
    return found;
  }

  file(path: string): LoadedFile | { readonly failure: string } {
    return this.#loadedBy(path, readUsed);
  }

  /** A file that the person named. What else lies in its folder may be used. */
  named(path: string): LoadedFile | { readonly failure: string } {
    this.#grounds.admit(dirname(path));
    return this.#loadedBy(path, readNamed);
  }

  /** The text of a file that is used, and of one that was named, without reading it as a schedule. */
  usedText(path: string): Text {
    return this.#textOf(path, readUsed);
  }

  namedText(path: string): Text {
    this.#grounds.admit(dirname(path));
    const text = this.#textOf(path, readNamed);
    // A pipe is read once; and what has another name than a schedule may be read because it was named.
    if (!("failure" in text) && (text.once || !isSchedule(path))) this.#lent.set(path, text.text);
    return text;
  }

  #glance: Glance | undefined;

  /**
   * The bytes of a file, until the next is asked for: one that its folder lists, that is no link, and that is plain text.
   * Its content is known from then on, and its text is not. Nothing where it has to be read as any other.
   */
  bytesOfPlain(path: string): Buffer | undefined {
    if (this.#onlyLent || this.#lent.has(path) || this.#texts.has(path)) return undefined;
    this.#glance ??= new Glance();
    const bytes = this.#glance.at(path);
    if (bytes) this.#texts.set(path, { content: contentOfBytes(bytes) });
    return bytes;
  }

  /** What distinguishes the content of a file from any other, or the reason why it could not be read. */
  contentOf(path: string): string {
    return (this.#texts.get(path) ?? this.#read(path, readUsed)).content;
  }

  #loadedBy(path: string, read: Reader): LoadedFile | { readonly failure: string } {
    const text = this.#textOf(path, read);
    if ("failure" in text) return text;
    const known = this.#texts.get(path) as Known;
    known.file ??= fileOfText(path, text.text, this.engine.lines);
    return known.file;
  }

  #textOf(path: string, read: Reader): NamedText {
    return this.#texts.get(path)?.text ?? this.#read(path, read).text;
  }

  #read(path: string, read: Reader): Known & { readonly text: NamedText } {
    const lent = this.#lent.get(path);
    if (lent !== undefined) return this.#keep(path, { text: lent, bom: false });
    const notStaged = (): NamedText => refusedByPath(path, this.#grounds) ?? { failure: "it is not staged." };
    return this.#keep(path, this.#onlyLent ? notStaged() : read(path, this.#grounds));
  }

  #keep(path: string, text: NamedText): Known & { readonly text: NamedText } {
    const known = { text, content: contentOfText(text) };
    this.#texts.set(path, known);
    return known;
  }

  /** Lets go of the text of a file and remembers its content alone; it is read again where it is asked for again. */
  release(path: string): void {
    const known = this.#texts.get(path);
    if (known) this.#texts.set(path, { content: known.content });
  }

  /** A file was written meanwhile: it is read again. */
  reread(path: string): void {
    this.#texts.delete(path);
  }

  /** Lets go of all files but some. */
  forget(keep: (path: string) => boolean): void {
    for (const path of this.#texts.keys()) if (!keep(path)) this.#texts.delete(path);
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
    this.#lent.set(path, text);
    this.#texts.delete(path);
  }

  /** Nothing is read of the disk any more: there is only what is lent. */
  lendOnly(): void {
    this.#onlyLent = true;
  }

  get hasOnlyLent(): boolean {
    return this.#onlyLent;
  }

  /** The texts that stand for what is on the disk. */
  get lent(): ReadonlyMap<string, string> {
    return this.#lent;
  }

  /** The path as it is shown: from the current folder, with slashes on every system. */
  shown(path: string): string {
    return shownPath(this.#cwd, path);
  }
}

/** What distinguishes a text from any other, and from what could not be read. */
export const contentOfText = (text: Text): string =>
  "failure" in text ? `! ${text.failure}` : contentOfBytes(text.bom ? `\ufeff${text.text}` : text.text);

const contentOfBytes = (bytes: Buffer | string): string => hash("sha256", bytes, "base64url");

export const shownPath = (cwd: string, path: string): string => slashes(relative(cwd, path)) || ".";

const slashes = (path: string): string => (sep === "/" ? path : path.replaceAll(sep, "/"));
