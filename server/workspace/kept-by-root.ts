import type { LoadedFile, Sources } from "./project.ts";

export type ReadFile = LoadedFile | { readonly failure: string };

/** The files as they are at a moment; the revision tells at a glance that nothing happened since another. */
export interface WorkspaceState {
  readonly revision: number;
  readonly find: (path: string) => ReadFile | undefined;
  readonly resolve: Sources["resolve"];
}

/** What was found for a root, and the files it was found in: right for as long as none of them is another. */
interface Kept<T> {
  readonly revision: number;
  readonly read: ReadonlyMap<string, ReadFile>;
  readonly value: T;
}

const notRead = { failure: "it has not been read yet." };

/** Answers about projects, each kept until a file it was made of changes. */
export class RootCache<T> {
  readonly #kept = new Map<string, Kept<T>>();

  of(root: LoadedFile, { revision, find, resolve }: WorkspaceState, make: (sources: Sources) => T): T {
    const before = this.#kept.get(root.path);
    if (before && before.revision === revision) return before.value;
    if (before && [...before.read].every(([path, found]) => find(path) === found)) {
      this.#kept.set(root.path, { ...before, revision });
      return before.value;
    }
    const read = new Map<string, ReadFile>([[root.path, root]]);
    const file = (path: string): ReadFile => {
      const found = find(path) ?? notRead;
      read.set(path, found);
      return found;
    };
    const value = make({ file, resolve });
    this.#kept.set(root.path, { revision, read, value });
    return value;
  }

  hasRead(root: string, path: string): boolean {
    return this.#kept.get(root)?.read.has(path) ?? false;
  }

  delete(root: string): void {
    this.#kept.delete(root);
  }
}
