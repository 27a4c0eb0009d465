/** Schedules as a revision of git has them: the files that are used come from the same revision as what uses them. */

import { posix } from "node:path";
import { isSchedule } from "../disk/refusals.ts";
import type { Repository, Revision } from "../git/repository.ts";
import { Engine } from "../model/engine.ts";
import { decode, type Text } from "../text/decode.ts";
import type { Sources } from "../workspace/gather.ts";
import { fileOfText, type LoadedFile } from "../workspace/loaded-file.ts";
import { contentOfText } from "./files.ts";
import { usesIn } from "./run/plan.ts";

type Loaded = LoadedFile | { readonly failure: string };

export class RevisionFiles implements Sources {
  readonly engine = new Engine();
  readonly #repository: Repository;
  readonly #revision: Revision;
  readonly #bytes = new Map<string, Buffer | undefined>();
  readonly #loaded = new Map<string, Loaded>();

  constructor(repository: Repository, revision: Revision) {
    this.#repository = repository;
    this.#revision = revision;
  }

  /** Reads files and all they use. Paths are from the top of the repository. */
  async load(paths: readonly string[]): Promise<{ readonly failure: string } | undefined> {
    for (let wanted = this.#unread(paths); wanted.length > 0; ) {
      const contents = await this.#repository.contents(this.#revision, wanted);
      if ("failure" in contents) return contents;
      for (const path of wanted) this.#bytes.set(path, contents.get(path));
      wanted = this.#unread(wanted.flatMap((path) => this.usesOf(path)));
    }
    return undefined;
  }

  #unread(paths: readonly string[]): string[] {
    return [...new Set(paths)].filter((path) => !this.#bytes.has(path) && isInside(path) && isSchedule(path));
  }

  file(path: string): Loaded {
    if (!isInside(path)) return { failure: "it lies outside the repository." };
    if (!isSchedule(path)) return { failure: "its name does not end in “.ways”." };
    const before = this.#loaded.get(path);
    if (before) return before;
    const read = this.text(path);
    const file = "failure" in read ? read : fileOfText(path, read.text);
    this.#loaded.set(path, file);
    return file;
  }

  /** The text of a file that was loaded. */
  text(path: string): Text {
    const bytes = this.#bytes.get(path);
    if (bytes) return decode(bytes);
    const isStaged = "index" in this.#revision;
    return { failure: isStaged ? "it is not staged, or in conflict." : "there is no such file in this revision." };
  }

  /** The files that one uses, told without reading it as a schedule. */
  usesOf(path: string): readonly string[] {
    const read = this.text(path);
    return "failure" in read ? [] : usesIn(read.text).map((use) => this.resolve(path, use));
  }

  /** What tells the text of a file from any other. */
  contentOf(path: string): string {
    return contentOfText(this.text(path));
  }

  /** Lets go of a file, not of its bytes. */
  release(path: string): void {
    this.#loaded.delete(path);
  }

  resolve(from: string, use: string): string {
    return posix.normalize(posix.join(posix.dirname(from), use.replaceAll("\\", "/")));
  }
}

const isInside = (path: string): boolean => path !== ".." && !path.startsWith("../") && !posix.isAbsolute(path);
