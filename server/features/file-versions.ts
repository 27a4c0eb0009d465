/** How one file came to be what it is: every commit that changed it, each compared with what was before it. */
import type { FileModel } from "../model/file.ts";
import type { EntryChange } from "../reports/compare/changes.ts";
import { changesInFile, type FileChanges } from "../reports/compare/records.ts";
import type { Edit } from "../reports/history/timeline.ts";
import { fileOfText, type LoadedFile } from "../workspace/loaded-file.ts";

/** A commit that changed the file, with the name the file had there and in the commits before. */
export interface PastCommit {
  readonly id: string;
  readonly author: string;
  /** ISO 8601. */
  readonly when: string;
  readonly subject: string;
  readonly parents: readonly string[];
  readonly path: string;
  readonly before: string;
}

export interface Version extends Edit {
  /** The versions before it: none of the first, two of a merge. */
  readonly before: readonly { readonly model: FileModel; readonly commit: string }[];
}

/** The latest first, what is not committed before all. `textOf` is asked by `commit:path`; empty where nothing was. */
export function versionsOf(
  file: LoadedFile,
  commits: readonly PastCommit[],
  textOf: (name: string) => string,
): readonly Version[] {
  // A text that stands in many commits is read once.
  const models = new Map<string, FileModel>();
  const modelOf = (name: string): FileModel => {
    const text = textOf(name);
    const known = models.get(text) ?? fileOfText(file.path, text).model;
    models.set(text, known);
    return known;
  };
  const versions = commits.map((commit): Version => {
    const model = modelOf(`${commit.id}:${commit.path}`);
    const before = commit.parents.map((one) => ({ model: modelOf(`${one}:${commit.before}`), commit: one }));
    return {
      commit: commit.id.slice(0, 8),
      by: commit.author,
      on: commit.when.slice(0, 10),
      subject: commit.subject,
      before,
      ...changesSince(
        before.map((one) => one.model),
        model,
      ),
    };
  });
  const [latest] = commits;
  const head = latest ? [{ model: modelOf(`${latest.id}:${latest.path}`), commit: latest.id }] : [];
  const own = changesSince(
    head.map(({ model }) => model),
    file.model,
  );
  const uncommitted: Version[] =
    own.changes.length + own.moved.size === 0 ? [] : [{ by: "", on: "", subject: "", before: head, ...own }];
  return [...uncommitted, ...versions];
}

const nothing: FileModel = fileOfText("", "").model;

/** A merge changed what is as none of its sides had it. */
function changesSince(before: readonly FileModel[], after: FileModel): FileChanges {
  const [first = nothing, ...others] = before;
  const { changes, moved } = changesInFile(first, after);
  const rest = others.map((other) => new Set(changesInFile(other, after).changes.map(keyOf)));
  return { changes: changes.filter((change) => rest.every((keys) => keys.has(keyOf(change)))), moved };
}

const keyOf = ({ old, now, kind }: EntryChange): string =>
  `${kind === "read" || kind === "came" ? "new" : ""}${(now ?? old)?.at} ${now?.meaning}`;
