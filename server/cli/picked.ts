/**
 * Which commit a rebase or a cherry-pick is at, where git does not tell its driver: before 2.44 it hands over no names.
 * What it has noted of its progress is only a candidate; the commit whose text of the file is the other side's is the one.
 */
import { join } from "node:path";
import { readBeside } from "../disk/read-now.ts";
import { git } from "../git/run.ts";
import { decode } from "../text/decode.ts";

/** `path`: of the file in its repository; `theirs`: the text of the other side. */
export async function pickedName(path: string, theirs: string, folder: string): Promise<string | undefined> {
  const found = await git(folder, ["rev-parse", "--absolute-git-dir"]);
  if ("failure" in found) return undefined;
  for (const commit of new Set(candidatesIn(found.out.toString("utf8").trim()))) {
    const there = await git(folder, ["cat-file", "blob", `${commit}:${path}`]);
    const read = "out" in there ? decode(there.out) : undefined;
    if (!read || "failure" in read || read.text !== theirs) continue;
    const called = await git(folder, ["log", "-1", "--format=%h (%s)", commit, "--"]);
    if ("out" in called) return called.out.toString("utf8").trim();
  }
  return undefined;
}

/** A rebase notes each step before it takes it; a series of picks keeps the one it is at in front of those to come. */
function candidatesIn(gitFolder: string): readonly string[] {
  const done = linesOf(join(gitFolder, "rebase-merge", "done")).at(-1);
  const [next] = linesOf(join(gitFolder, "sequencer", "todo"));
  const heads = ["REBASE_HEAD", "CHERRY_PICK_HEAD"].flatMap((name) => linesOf(join(gitFolder, name)));
  return [done, next, ...heads].flatMap((line) => /(?:^| )([0-9a-f]{7,64})(?: |$)/.exec(line ?? "")?.[1] ?? []);
}

function linesOf(path: string): readonly string[] {
  const read = readBeside(path);
  return "failure" in read ? [] : read.text.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
}
