import { Engine } from "../model/engine.ts";
import type { KnownLines } from "../model/known-lines.ts";
import type { Sources } from "./gather.ts";
import type { LoadedFile } from "./loaded-file.ts";
import { Project } from "./project.ts";

export type ReadFile = LoadedFile | { readonly failure: string };

/** The files as they are at a moment; the revision shows at a glance that nothing has happened since another. */
export interface WorkspaceState {
  readonly revision: number;
  readonly find: (path: string) => ReadFile | undefined;
  readonly resolve: Sources["resolve"];
}

/** A project and the files it was made of: the one to ask for as long as none of them is another. */
interface Kept {
  readonly revision: number;
  readonly read: ReadonlyMap<string, ReadFile>;
  readonly project: Project;
}

const notRead = { failure: "it has not been read yet." };

/** The newest project of each root. Older ones answer whoever still holds them, and nothing they find gets in here. */
export class Projects {
  readonly #kept = new Map<string, Kept>();
  readonly #engine = new Engine();

  /** Lines that were met in any file. */
  get lines(): KnownLines {
    return this.#engine.lines;
  }

  of(root: LoadedFile, { revision, find, resolve }: WorkspaceState): Project {
    const before = this.#kept.get(root.path);
    if (before && before.project.root === root) {
      if (before.revision === revision) return before.project;
      if ([...before.read].every(([path, found]) => (find(path) ?? notRead) === found)) {
        this.#kept.set(root.path, { ...before, revision });
        return before.project;
      }
    }
    const read = new Map<string, ReadFile>([[root.path, root]]);
    const file = (path: string): ReadFile => {
      const found = find(path) ?? notRead;
      read.set(path, found);
      return found;
    };
    const project = new Project(root, { file, resolve, engine: this.#engine });
    this.#kept.set(root.path, { revision, read, project });
    this.#engine.schedules = this.#kept.size;
    return project;
  }

  /** All files that were read together with one, in any project. */
  readWith(path: string): ReadonlySet<string> {
    const beside = new Set<string>();
    for (const { read } of this.#kept.values()) {
      if (read.has(path)) for (const other of read.keys()) beside.add(other);
    }
    return beside;
  }

  delete(root: string): void {
    this.#kept.delete(root);
  }
}
