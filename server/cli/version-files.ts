/** The files of a version, wherever they lie: on the disk, in a revision, or come in through standard input. */
import { posix, resolve } from "node:path";
import { ceiling, decode, type Text } from "../text/decode.ts";
import type { Sources } from "../workspace/gather.ts";
import type { LoadedFile } from "../workspace/loaded-file.ts";
import { Disk, shownPath } from "./files.ts";
import { RevisionFiles } from "./revision-files.ts";
import { Scan } from "./run/plan.ts";
import { findFiles } from "./search.ts";
import type { Terminal } from "./terminal.ts";
import type { Asked, Failure, VersionOptions } from "./version-names.ts";

/** What a version is read from. */
export interface Opened {
  readonly called: string;
  readonly single: boolean;
  /** Paths of the files that were named or found. */
  readonly paths: readonly string[];
  readonly sources: Sources;
  /** The path of a file from the folder or revision that was named. */
  readonly shown: (path: string) => string;
  readonly load: (path: string) => LoadedFile | Failure;
  /** The text of a file that was loaded, or that such a one uses. */
  readonly textOf: (path: string) => Text;
  /** Files and folders that were found and could not be read, and a sentence on each. */
  readonly closed?: readonly string[];
  readonly failures?: readonly string[];
  /** What tells the text of a file from any other, and which files it uses, without reading it as a schedule. */
  readonly contentOf: (path: string) => string;
  readonly usesOf: (path: string) => readonly string[];
  /** Lets go of a file, which is read again where it is needed again. */
  readonly release: (path: string) => void;
}

export async function opened(asked: Asked, options: VersionOptions, terminal: Terminal): Promise<Opened | Failure> {
  switch (asked.kind) {
    case "input":
      return fromInput(asked, options, terminal);
    case "disk":
      return fromDisk(asked, terminal);
    case "revision":
      return fromRevision(asked);
  }
}

async function fromInput(
  { called }: Asked,
  { stdinPath }: VersionOptions,
  terminal: Terminal,
): Promise<Opened | Failure> {
  const read = decode(await terminal.input(ceiling));
  if ("failure" in read) return { failure: `Standard input cannot be read: ${read.failure}` };
  const disk = new Disk(terminal.cwd);
  const path = disk.path(stdinPath ?? "(standard input)");
  disk.lend(path, read.text);
  return {
    ...onDisk(disk, new Scan(disk)),
    called,
    single: true,
    paths: [path],
    shown: (one) => disk.shown(one),
    load: () => disk.file(path),
  };
}

const onDisk = (disk: Disk, scan: Scan): Pick<Opened, "sources" | "textOf" | "contentOf" | "usesOf" | "release"> => ({
  sources: disk,
  textOf: (path) => disk.usedText(path),
  contentOf: (path) => disk.contentOf(path),
  usesOf: (path) => scan.graph.get(path).uses,
  release: (path) => disk.release(path),
});

async function fromDisk(
  { called, path }: Asked & { readonly kind: "disk" },
  { cwd }: Terminal,
): Promise<Opened | Failure> {
  const disk = new Disk(cwd);
  const found = await findFiles([shownPath(cwd, path)], cwd);
  for (const folder of found.folders) disk.admit(folder);
  const single = found.folders.length === 0;
  const unreadable = (one: string, { failure }: Failure): Failure => ({
    failure: `“${disk.shown(one)}” cannot be read: ${failure}`,
  });
  const scan = new Scan(disk);
  const paths: string[] = [];
  const closed = [...found.closed];
  const failures = closed.length > 0 ? [...found.failures] : [];
  for (const [listed, plain] of found.files) {
    const one = plain ? disk.plainPath(listed) : disk.path(listed);
    // One file is compared whatever its name, and may be a pipe, which is read once.
    const failed = single ? undefined : scan.addNamed(one, plain);
    if (!failed) paths.push(one);
    else {
      closed.push(one);
      failures.push(unreadable(one, failed).failure);
    }
  }
  const base = single ? cwd : path;
  return {
    ...onDisk(disk, scan),
    called,
    single,
    paths,
    closed,
    failures,
    shown: (one) => shownPath(base, one),
    load: (one) => {
      const file = disk.named(one);
      return "failure" in file ? unreadable(one, file) : file;
    },
  };
}

async function fromRevision(asked: Asked & { readonly kind: "revision" }): Promise<Opened | Failure> {
  const { called, repository, revision, path = "" } = asked;
  const listed = await repository.files(revision, ".ways", path);
  if ("failure" in listed) return listed;
  const single = listed.length === 1 && listed[0] === path;
  if (listed.length === 0 && path.endsWith(".ways"))
    return { failure: `There is no “${path}” in “${called}”${await whereInstead(asked)}.` };
  const files = new RevisionFiles(repository, revision);
  const failed = await files.load(listed);
  if (failed) return failed;
  return {
    called,
    single,
    paths: listed,
    sources: files,
    shown: (one) => posix.relative(single ? "" : path, one),
    load: (one) => {
      const file = files.file(one);
      const name = single ? called : `${called}:${one}`;
      return "failure" in file ? { failure: `“${name}” cannot be read: ${file.failure}` } : file;
    },
    textOf: (one) => files.text(one),
    contentOf: (one) => files.contentOf(one),
    usesOf: (one) => files.usesOf(one),
    release: (one) => files.release(one),
  };
}

/** Git counts the path behind a colon from the top of the repository, whichever folder one is in. */
async function whereInstead({ repository, revision, path = "", cwd }: Asked & { readonly kind: "revision" }) {
  const below = repository.inside(resolve(cwd, path));
  const found = below === undefined ? [] : await repository.files(revision, ".ways", below);
  return "failure" in found || found.length === 0 ? "" : `: write “./${path}” for the one in this folder`;
}
