/**
 * What a person compares: files, folders, revisions of git, the index or standard input. Whatever it is, it becomes a
 * list of schedules, each with all it uses from where it is itself.
 */
import { hash } from "node:crypto";
import { existsSync } from "node:fs";
import { posix, resolve } from "node:path";
import { Repository, type Revision } from "../git/repository.ts";
import { ceiling, decode, type Text } from "../text/decode.ts";
import type { Sources } from "../workspace/gather.ts";
import { gather } from "../workspace/gather.ts";
import { isNewer, languageVersion } from "../workspace/language-version.ts";
import { sizeOf } from "../workspace/large-text.ts";
import type { LoadedFile } from "../workspace/loaded-file.ts";
import { Disk, shownPath } from "./files.ts";
import { RevisionFiles } from "./revision-files.ts";
import { installationsWritten, type VersionFile, type VersionTexts } from "./run/compare-task.ts";
import { Scan, usesIn } from "./run/plan.ts";
import { findFiles } from "./search.ts";
import type { Terminal } from "./terminal.ts";

/** One installation as one version has it. */
export interface Schedule {
  /** Its file, from the folder or revision that was named. */
  readonly path: string;
  readonly title: string;
  /** What tells the texts it is read from from any others: where they are the same, nothing needs to be compared. */
  readonly content: string;
  /** Characters of its own file. */
  readonly size: number;
  /** A file that others use, by itself: without the installation it is in, nothing can be judged. */
  readonly isPart?: true;
  /** These texts. They are read when it is compared and let go of again, so that thousands of schedules are not held. */
  readonly texts: () => VersionTexts;
}

export interface LoadedVersion {
  readonly called: string;
  readonly schedules: readonly Schedule[];
  /** How many more there are that are the same in all versions, and whether parts of installations are among them. */
  readonly same: number;
  readonly hasSameParts: boolean;
  /** Whether one file was named, which is then compared whatever its name. */
  readonly single: boolean;
  /** What could not be read of it, a sentence each. */
  readonly failures: readonly string[];
  /** Whether nothing is known of a file: what the other version holds in it is neither new nor gone. */
  readonly isUnread: (path: string) => boolean;
}

type Failure = { readonly failure: string };

/** What an argument means, before anything is read. */
type Asked =
  | { readonly kind: "input"; readonly called: string }
  | { readonly kind: "disk"; readonly called: string; readonly path: string }
  | {
      readonly kind: "revision";
      readonly called: string;
      readonly revision: Revision;
      readonly repository: Repository;
      /** The folder it was named in. */
      readonly cwd: string;
      /** From the top of the repository; nothing where the revision alone was named. */
      readonly path?: string;
    };

interface VersionOptions {
  readonly stdinPath?: string;
}

/** The versions that arguments name: at least two of them. */
export async function versionsNamed(
  args: readonly string[],
  options: VersionOptions,
  terminal: Terminal,
): Promise<readonly LoadedVersion[] | Failure> {
  if (args.filter((arg) => arg === "-").length > 1) return { failure: "Standard input can be read once only." };
  const asked: Asked[] = [];
  for (const arg of await spread(args, terminal)) {
    const one = await askedFor(arg, terminal.cwd);
    if ("failure" in one) return one;
    asked.push(one);
  }
  const all = withPaths(asked.length === 1 ? [...asked, workingTree(asked[0], terminal.cwd)] : asked, terminal.cwd);
  const stdinPath = options.stdinPath ?? fileBeside(all);
  const files: Opened[] = [];
  for (const one of all) {
    const version = await opened(one, stdinPath === undefined ? {} : { stdinPath }, terminal);
    if ("failure" in version) return version;
    files.push(version);
  }
  const equal = equalIn(files);
  const versions: LoadedVersion[] = [];
  for (const one of files) {
    const [first] = versions;
    const version = versionOf(one, equal, first);
    if ("failure" in version) return version;
    versions.push(version);
  }
  return versions;
}

/** What comes in is a version of the one file it is compared with: what it uses lies where that lies. */
function fileBeside(asked: readonly Asked[]): string | undefined {
  const files = asked.flatMap((one) => {
    if (one.kind === "disk") return one.path.endsWith(".ways") ? [one.path] : [];
    return one.kind === "revision" && one.path?.endsWith(".ways") ? [one.repository.outside(one.path)] : [];
  });
  return files.length === 1 ? files[0] : undefined;
}

/** `main..site` is two revisions, `main...site` the second and what it has in common with the first. */
async function spread(args: readonly string[], { cwd }: Terminal): Promise<readonly string[]> {
  const [only = ""] = args;
  const [, from = "", dots = "", to = ""] = /^([^:]*?)(\.{2,3})([^:.][^:]*|)$/.exec(only) ?? [];
  if (args.length !== 1 || dots === "" || existsSync(resolve(cwd, only))) return args;
  const [a, b] = [from || "HEAD", to || "HEAD"];
  if (dots === "..") return [a, b];
  const repository = await Repository.round(cwd);
  const base = "failure" in repository ? undefined : await repository.mergeBase(a, b);
  return [base?.slice(0, shortName) ?? a, b];
}

/** As many signs of a commit as a person reads. */
const shortName = 12;

async function askedFor(arg: string, cwd: string): Promise<Asked | Failure> {
  if (arg === "-") return { kind: "input", called: "standard input" };
  const path = resolve(cwd, arg);
  if (existsSync(path)) return { kind: "disk", called: arg, path };
  const missing = `“${arg}” is no file, folder or revision of git here.`;
  const repository = await Repository.round(cwd);
  if ("failure" in repository) {
    return { failure: looksLikeRevision(arg) ? repository.failure : missing };
  }
  const colon = arg.indexOf(":");
  const [name, named] = colon < 0 ? [arg, undefined] : [arg.slice(0, colon), arg.slice(colon + 1)];
  const revision = colon === 0 ? ({ index: true } as const) : await repository.commit(name);
  if ("failure" in revision)
    return { failure: colon < 0 ? `${missing}${await repository.whereItMayBe()}` : revision.failure };
  const own = { kind: "revision", called: arg, revision, repository, cwd } as const;
  if (named === undefined) return own;
  return { ...own, path: pathNamed(named, repository, cwd) };
}

const looksLikeRevision = (arg: string): boolean => /^HEAD|[~^@:]/.test(arg);

/** As git takes it: from the top of the repository, or from this folder where it begins with `./`. */
function pathNamed(named: string, repository: Repository, cwd: string): string {
  if (/^\.\.?(?:\/|$)/.test(named)) return repository.inside(resolve(cwd, named)) ?? named;
  return posix.normalize(named);
}

/** A revision by itself is compared with what is on the disk. */
const workingTree = (asked: Asked | undefined, cwd: string): Asked => {
  const path = asked?.kind === "revision" && asked.path !== undefined ? asked.repository.outside(asked.path) : cwd;
  return { kind: "disk", called: "the files on the disk", path };
};

/** A revision that was named without a path is compared where the other is: its file, its folder, or this folder. */
function withPaths(asked: readonly Asked[], cwd: string): readonly Asked[] {
  const other = asked.find((one) => one.kind === "disk");
  const named = asked.find((one) => one.kind === "revision" && one.path !== undefined);
  return asked.map((one) => {
    if (one.kind !== "revision" || one.path !== undefined) return one;
    const path =
      named?.kind === "revision" ? named.path : one.repository.inside(other?.kind === "disk" ? other.path : cwd);
    return { ...one, path: path ?? "" };
  });
}

/** What a version is read from. */
interface Opened {
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

async function opened(asked: Asked, options: VersionOptions, terminal: Terminal): Promise<Opened | Failure> {
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

/**
 * Files, as they are shown, that are in all versions with the same text and the same of all they use, and that no other
 * file there uses. What they hold is the same, so that of thousands of them nothing needs to be kept.
 */
function equalIn(versions: readonly Opened[]): ReadonlySet<string> {
  const [first, ...others] = versions.map(({ single, ...one }) => (single ? new Map() : alone(one)));
  const equal = [...(first ?? [])].filter(([path, content]) => others.every((other) => other.get(path) === content));
  return new Set(equal.map(([path]) => path));
}

/** Each file that no other uses, with what tells it and all it uses from any other. */
function alone({ paths, shown, usesOf, contentOf }: Omit<Opened, "single">): ReadonlyMap<string, string> {
  const used = new Set(paths.flatMap((path) => usesOf(path).filter((one) => one !== path)));
  const contentWithUsed = (path: string): string => {
    const parts = [...withUsed(path, usesOf)].map((one) => `${shown(one)}\0${contentOf(one)}`);
    return hash("sha256", parts.join("\0\0"), "base64url");
  };
  return new Map(paths.filter((path) => !used.has(path)).map((path) => [shown(path), contentWithUsed(path)]));
}

function withUsed(path: string, usesOf: Opened["usesOf"]): ReadonlySet<string> {
  const all = new Set([path]);
  for (const one of all) for (const next of usesOf(one)) all.add(next);
  return all;
}

/**
 * Every installation of the files, with what it uses; what others use is compared with them. What is the same in all
 * versions is read in the `first` of them alone.
 */
function versionOf(
  opened: Opened,
  equal: ReadonlySet<string>,
  first: LoadedVersion | undefined,
): LoadedVersion | Failure {
  const { called, single, paths, sources, shown, load, usesOf, release } = opened;
  const failures = [...(opened.failures ?? [])];
  const unread = new Set((opened.closed ?? []).map(shown));
  const schedules: Schedule[] = [];
  const used = new Set<string>();
  const parts: string[] = [];
  let { same, hasSameParts } = first ?? { same: 0, hasSameParts: false };
  const leaveOut = (path: string, { failure }: Failure): void => {
    failures.push(failure);
    unread.add(shown(path));
  };
  const add = (file: LoadedFile, isPart: boolean): Failure | undefined => {
    // A part is compared in the installations it is in.
    if (used.has(file.path)) return undefined;
    const { files: all, findings, unread: isOpen } = gather(file, sources);
    if (all.some(isNewer))
      return {
        failure: `“${shown(file.path)}” is in a newer version of the language than ${languageVersion}: get a newer program.`,
      };
    for (const { path } of all) used.add(path);
    failures.push(...findings.map(({ message }) => message));
    // Of what it uses the installations are compared where they are written.
    const own = installationsWritten(file, all, isOpen, sources.engine);
    const content = all.map(({ path }) => opened.contentOf(path)).join("\n");
    const made = own.map(({ head: { title } }, index): Schedule => {
      const texts = () => textsOf(file.path, isPart ? "part" : index, opened);
      const size = sizeOf(file.document);
      return { path: shown(file.path), title, content, size, texts, ...(isPart ? { isPart } : {}) };
    });
    const kept = isPart && !all.some(hasContent) ? [] : made;
    if (equal.has(shown(file.path))) {
      same += kept.length;
      hasSameParts ||= isPart && kept.length > 0;
    } else schedules.push(...kept);
    if (!single) release(file.path);
    return undefined;
  };
  for (const path of paths) {
    if (first && equal.has(shown(path))) {
      for (const one of withUsed(path, usesOf)) used.add(one);
      continue;
    }
    const file = load(path);
    const isPart = !("failure" in file) && file.model.installations.length === 0;
    if (isPart) parts.push(path);
    const failed = "failure" in file ? file : isPart ? undefined : add(file, false);
    if (failed && single) return failed;
    if (failed) leaveOut(path, failed);
  }
  for (const path of parts) {
    const file = load(path);
    const failed = "failure" in file ? file : add(file, true);
    if (failed && single) return failed;
    if (failed) leaveOut(path, failed);
  }
  return {
    called,
    schedules,
    same,
    hasSameParts,
    single,
    failures,
    isUnread: (path) => partsAbove(path).some((part) => unread.has(part)),
  };
}

/** A path and the folders above it. */
const partsAbove = (path: string): readonly string[] => [
  ".",
  ...path.split("/").map((_, index, parts) => parts.slice(0, index + 1).join("/")),
];

/** An empty file is nothing to compare. */
const hasContent = ({ model: { boards, facts } }: LoadedFile): boolean =>
  boards.length > 0 || facts.list.some(({ word }) => word !== "wayfile");

/** A file with all it uses, under the names they have from the folder or revision. */
function textsOf(
  root: string,
  index: VersionTexts["index"],
  { sources, shown, single, textOf, release }: Opened,
): VersionTexts {
  const own = (path: string): VersionFile & { readonly next: readonly string[] } => {
    const read = textOf(path);
    if ("failure" in read) return { path: shown(path), uses: [], next: [] };
    const uses = usesIn(read.text).map((use) => [use, sources.resolve(path, use)] as const);
    const named = uses.map(([use, to]) => [use, shown(to)] as const);
    return { path: shown(path), text: read.text, uses: named, next: uses.map(([, to]) => to) };
  };
  const seen = new Set([root]);
  const files: VersionFile[] = [];
  for (const path of seen) {
    const { next, ...file } = own(path);
    for (const one of next) seen.add(one);
    files.push(file);
  }
  if (!single) release(root);
  return { files: files as [VersionFile, ...VersionFile[]], index };
}
