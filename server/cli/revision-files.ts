/** Schedules as a revision of git has them: the files that are used come from the same revision as what uses them. */

import { posix } from "node:path";
import { isSchedule } from "../disk/refusals.ts";
import type { Repository, Revision } from "../git/repository.ts";
import { Engine } from "../model/engine.ts";
import { decode } from "../text/decode.ts";
import { fileOfText, type LoadedFile, type Sources } from "../workspace/project.ts";

type Loaded = LoadedFile | { readonly failure: string };

export class RevisionFiles implements Sources {
  readonly engine = new Engine();
  readonly #repository: Repository;
  readonly #revision: Revision;
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
      const uses: string[] = [];
      for (const path of wanted) {
        const file = loaded(path, contents.get(path));
        this.#loaded.set(path, file);
        if (!("failure" in file)) for (const use of usesOf(file)) uses.push(this.resolve(path, use));
      }
      wanted = this.#unread(uses);
    }
    return undefined;
  }

  #unread(paths: readonly string[]): string[] {
    return [...new Set(paths)].filter((path) => !this.#loaded.has(path) && isInside(path) && isSchedule(path));
  }

  file(path: string): Loaded {
    if (!isInside(path)) return { failure: "it lies outside the repository." };
    if (!isSchedule(path)) return { failure: "its name does not end in “.ways”." };
    return this.#loaded.get(path) ?? { failure: "there is no such file in this revision." };
  }

  resolve(from: string, use: string): string {
    return posix.normalize(posix.join(posix.dirname(from), use.replaceAll("\\", "/")));
  }
}

const isInside = (path: string): boolean => path !== ".." && !path.startsWith("../") && !posix.isAbsolute(path);

function loaded(path: string, bytes: Buffer | undefined): Loaded {
  if (!bytes) return { failure: "there is no such file in this revision." };
  const read = decode(bytes);
  return "failure" in read ? read : fileOfText(path, read.text);
}

const usesOf = ({ model }: LoadedFile): string[] => model.facts.all("use").map(({ args }) => args.path.value);
