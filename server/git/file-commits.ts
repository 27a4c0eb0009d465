/** Every commit that changed one file, with what it and the commits before it held. */
import path from "node:path";
import { type FileCommit, Repository } from "./repository.ts";
import type { GitFailure } from "./run.ts";

export interface FileCommits {
  readonly repository: Repository;
  /** The latest first. */
  readonly commits: readonly FileCommit[];
  /** By `commit:path`. */
  readonly bodies: ReadonlyMap<string, Buffer>;
  /** Whether this copy of the repository is cut off. */
  readonly isShallow: boolean;
}

/** `file`: of the disk. All texts come from one process of git. */
export async function fileCommits(file: string): Promise<FileCommits | GitFailure> {
  const repository = await Repository.round(path.dirname(file));
  if ("failure" in repository) return repository;
  const inside = repository.inside(file);
  if (inside === undefined) return { failure: "The file lies outside its repository." };
  const commits = await repository.commitsOf(inside, "HEAD");
  // A repository without a commit has no history yet.
  if ("failure" in commits) return { failure: commits.failure };
  const names = commits.flatMap(({ id, parents, path: own, before }) => [
    `${id}:${own}`,
    ...parents.map((one) => `${one}:${before}`),
  ]);
  const wanted = [...new Set(names)].filter((name) => !/[\r\n]/.test(name));
  const objects = await repository.objects(wanted);
  if ("failure" in objects) return objects;
  const bodies = new Map<string, Buffer>();
  for (const [index, name] of wanted.entries()) {
    const body = objects.bodies[index];
    if (body) bodies.set(name, body);
  }
  return { repository, commits, bodies, isShallow: await repository.isShallow() };
}

/** What one file of the disk held in a revision, such as `HEAD~3`; what is staged of it where that is empty. */
export async function fileAt(file: string, revision: string): Promise<{ readonly body: Buffer } | GitFailure> {
  const repository = await Repository.round(path.dirname(file));
  if ("failure" in repository) return repository;
  const inside = repository.inside(file);
  if (inside === undefined) return { failure: "The file lies outside its repository." };
  const commit = revision === "" ? ({ index: true } as const) : await repository.commit(revision);
  if ("failure" in commit) return commit;
  const contents = await repository.contents(commit, [inside]);
  if ("failure" in contents) return contents;
  const body = contents.get(inside);
  return body ? { body } : { failure: `${revision === "" ? "What is staged" : revision} has no such file.` };
}
