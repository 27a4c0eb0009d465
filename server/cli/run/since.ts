/** The schedules that a change in git reaches: those that hold or use a file that differs from a revision. */
import { resolve } from "node:path";
import { isSchedule } from "../../disk/refusals.ts";
import { Repository } from "../../git/repository.ts";
import { git } from "../../git/run.ts";
import type { Disk } from "../files.ts";

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
  const names = `${changed.out.toString("utf8")}\0${fresh.out.toString("utf8")}`.split("\0").filter(isSchedule);
  return new Set(names.map((name) => disk.path(resolve(repository.root, name))));
}
