/**
 * What is staged, as it would be committed: the contents of the index and not of the disk, used files included. Looked at
 * are the schedules that differ from the last commit, and those that use one of them.
 */
import { Repository } from "../git/repository.ts";
import { decode } from "../text/decode.ts";
import type { Disk } from "./files.ts";
import { usesIn } from "./run/plan.ts";

export interface Staged {
  readonly paths: readonly string[];
  /** What could not be read, a sentence each. */
  readonly failures: readonly string[];
}

/** The tree of no files, from which all that is staged for a first commit differs. */
const emptyTree = "4b825dc642cb6eb9a060e54bf8d69288fbee4904";

/** Lets what is staged stand for all that is on the disk, and says which of it is to be checked. */
export async function stagedFiles(cwd: string, disk: Disk): Promise<Staged | { readonly failure: string }> {
  const repository = await Repository.round(cwd);
  if ("failure" in repository) return repository;
  const head = await repository.commit("HEAD");
  const [all, changed] = await Promise.all([
    repository.files({ index: true }, ".ways"),
    repository.changed("failure" in head ? emptyTree : head.commit, { index: true }),
  ]);
  if ("failure" in all) return all;
  if ("failure" in changed) return changed;
  const contents = await repository.contents({ index: true }, all);
  if ("failure" in contents) return contents;
  const failures: string[] = [];
  const uses = new Map<string, readonly string[]>();
  const pathOf = (name: string): string => disk.path(repository.outside(name));
  disk.lendOnly();
  for (const [name, bytes] of contents) {
    const read = decode(bytes);
    const path = pathOf(name);
    if ("failure" in read) failures.push(`“${disk.shown(path)}” cannot be read as it is staged: ${read.failure}`);
    else {
      disk.lend(path, read.text);
      uses.set(
        path,
        usesIn(read.text).map((use) => disk.resolve(path, use)),
      );
    }
  }
  // Of a file that is being merged the index has the sides, and no content yet.
  for (const name of all.filter((one) => !contents.has(one) && !/[\r\n]/.test(one)))
    failures.push(
      `“${disk.shown(pathOf(name))}” is in conflict, so that nothing of it is staged: put it right and stage it.`,
    );
  return { paths: reaching(uses, new Set(changed.map(pathOf))), failures };
}

/** Files that are among those that changed, or use one that is. */
function reaching(uses: ReadonlyMap<string, readonly string[]>, changed: ReadonlySet<string>): string[] {
  const reached = new Set(changed);
  for (let size = -1; size !== reached.size; ) {
    size = reached.size;
    for (const [path, used] of uses) if (used.some((one) => reached.has(one))) reached.add(path);
  }
  return [...uses.keys()].filter((path) => reached.has(path));
}
