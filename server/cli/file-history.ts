import { type Version, versionsOf } from "../features/file-versions.ts";
import { fileCommits } from "../git/file-commits.ts";
import type { Repository } from "../git/repository.ts";
import { decode } from "../text/decode.ts";
import type { LoadedFile } from "../workspace/loaded-file.ts";

export interface FileHistory {
  readonly repository: Repository;
  /** The latest first, what is not committed before all. */
  readonly versions: readonly Version[];
  readonly isShallow: boolean;
}

/** The history of a file of the disk as git has it, or one sentence that says why there is none. */
export async function historyOf(path: string, file: LoadedFile): Promise<FileHistory | { readonly failure: string }> {
  const found = await fileCommits(path);
  if ("failure" in found) return found;
  const { repository, commits, bodies, isShallow } = found;
  const textOf = (name: string): string => {
    const bytes = bodies.get(name);
    const read = bytes ? decode(bytes) : { text: "" };
    return "failure" in read ? "" : read.text;
  };
  return { repository, versions: versionsOf(file, commits, textOf), isShallow };
}
