/** How one file came to be what it is: every commit that changed it, each compared with what was before it. */
import { Repository } from "../git/repository.ts";
import type { FileModel } from "../model/file.ts";
import type { EntryChange } from "../reports/compare/changes.ts";
import { changesInFile, type FileChanges } from "../reports/compare/records.ts";
import type { Edit } from "../reports/history/timeline.ts";
import { decode } from "../text/decode.ts";
import { fileOfText, type LoadedFile } from "../workspace/project.ts";

export interface FileHistory {
  readonly repository: Repository;
  /** The latest first, what is not committed before all. */
  readonly versions: readonly Version[];
  readonly isShallow: boolean;
}

export interface Version extends Edit {
  /** The versions before it: none of the first, two of a merge. */
  readonly before: readonly { readonly model: FileModel; readonly commit: string }[];
}

/** The history of a file of the disk as git has it, or one sentence that says why there is none. */
export async function historyOf(path: string, file: LoadedFile): Promise<FileHistory | { readonly failure: string }> {
  const repository = await Repository.round(folderOf(path));
  if ("failure" in repository) return repository;
  const inside = repository.inside(path);
  if (inside === undefined) return { failure: "The file lies outside its repository." };
  const commits = await repository.commitsOf(inside, "HEAD");
  // A repository without a commit has no history yet.
  if ("failure" in commits) return { failure: commits.failure };
  const names = [
    ...(commits[0] ? [`${commits[0].id}:${commits[0].path}`] : []),
    ...commits.flatMap(({ id, parents, path: own, before }) => [
      `${id}:${own}`,
      ...parents.map((one) => `${one}:${before}`),
    ]),
  ];
  const wanted = [...new Set(names)].filter((name) => !/[\r\n]/.test(name));
  const objects = await repository.objects(wanted);
  if ("failure" in objects) return objects;
  const texts = new Map(wanted.map((name, index) => [name, objects.bodies[index]]));
  // A text that stands in many commits is read once.
  const models = new Map<string, FileModel>();
  const modelOf = (name: string): FileModel => {
    const bytes = texts.get(name);
    const read = bytes ? decode(bytes) : { text: "" };
    const text = "failure" in read ? "" : read.text;
    const known = models.get(text) ?? fileOfText(path, text).model;
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
  return { repository, versions: [...uncommitted, ...versions], isShallow: await repository.isShallow() };
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

const folderOf = (path: string): string => path.replace(/[\\/][^\\/]*$/, "") || "/";
