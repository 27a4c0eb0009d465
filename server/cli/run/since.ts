/** The schedules that a change in git reaches: those that hold or use a file that differs from a revision. */
import { resolve } from "node:path";
import { isSchedule } from "../../disk/refusals.ts";
import { Repository } from "../../git/repository.ts";
import { type GitFailure, git } from "../../git/run.ts";
import { decode } from "../../text/decode.ts";
import { contentOfText, type Disk } from "../files.ts";

/**
 * The files that changed since the revision and the present branch were one, what is not committed and what is new
 * included; or one sentence that says why that cannot be told.
 */
export async function changedSince(
  revision: string,
  cwd: string,
  disk: Disk,
): Promise<ReadonlySet<string> | { readonly failure: string }> {
  const repository = await Repository.round(cwd);
  if ("failure" in repository) return repository;
  const named = await repository.commit(revision);
  if ("failure" in named) return named;
  const head = await repository.commit("HEAD");
  const base = "failure" in head ? named.commit : await repository.mergeBase(named.commit, head.commit);
  if (base === undefined) return { failure: `“${revision}” and the present branch have nothing in common.` };
  const plain = ["-z", "--name-only", "--no-renames", "--no-ext-diff", "--no-color"];
  const changed = await git(repository.root, ["diff-index", ...plain, base, "--"]);
  if ("failure" in changed) return changed;
  const fresh = await git(repository.root, ["ls-files", "-z", "--others", "--exclude-standard"]);
  if ("failure" in fresh) return fresh;
  const rewritten = await otherText(schedulesIn(changed.out), base, repository, disk);
  if ("failure" in rewritten) return rewritten;
  return new Set([...rewritten.names, ...schedulesIn(fresh.out)].map((name) => pathIn(repository, name, disk)));
}

const schedulesIn = (out: Buffer): string[] => out.toString("utf8").split("\0").filter(isSchedule);

const pathIn = ({ root }: Repository, name: string, disk: Disk): string => disk.path(resolve(root, name));

/** Git goes by the time of a file and leaves its content to others: one that was only written anew has not changed. */
async function otherText(
  names: readonly string[],
  base: string,
  repository: Repository,
  disk: Disk,
): Promise<{ readonly names: readonly string[] } | GitFailure> {
  const before = await repository.contents({ commit: base }, names);
  if ("failure" in before) return before;
  const isOther = (name: string): boolean => {
    const body = before.get(name);
    return body === undefined || contentOfText(decode(body)) !== disk.contentOf(pathIn(repository, name, disk));
  };
  return { names: names.filter(isOther) };
}
