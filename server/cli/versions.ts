/**
 * What a person compares: files, folders, revisions of git, the index or standard input. Whatever it is, it becomes a
 * list of schedules, each with all it uses from where it is itself.
 */
import { hash } from "node:crypto";
import { gather } from "../workspace/gather.ts";
import { isNewer, languageVersion } from "../workspace/language-version.ts";
import { sizeOf } from "../workspace/large-text.ts";
import type { LoadedFile } from "../workspace/loaded-file.ts";
import { installationsWritten, type VersionFile, type VersionTexts } from "./run/compare-task.ts";
import { usesIn } from "./run/plan.ts";
import type { Terminal } from "./terminal.ts";
import { type Opened, opened } from "./version-files.ts";
import {
  type Asked,
  askedFor,
  type Failure,
  fileBeside,
  spread,
  type VersionOptions,
  withPaths,
  workingTree,
} from "./version-names.ts";

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
    const version = new VersionReader(one, equal, first).read();
    if ("failure" in version) return version;
    versions.push(version);
  }
  return versions;
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

/** Reads the installations of a version, each with all it uses; what others use is compared with them. */
class VersionReader {
  readonly #opened: Opened;
  /** Files, as they are shown, that are the same in all versions: they are read in the first alone. */
  readonly #equal: ReadonlySet<string>;
  readonly #first: LoadedVersion | undefined;
  readonly #schedules: Schedule[] = [];
  readonly #failures: string[];
  /** Files, as they are shown, of which nothing is known. */
  readonly #unread: Set<string>;
  /** Files of the installations that were read. */
  readonly #used = new Set<string>();
  #same: number;
  #hasSameParts: boolean;

  constructor(opened: Opened, equal: ReadonlySet<string>, first: LoadedVersion | undefined) {
    this.#opened = opened;
    this.#equal = equal;
    this.#first = first;
    this.#failures = [...(opened.failures ?? [])];
    this.#unread = new Set((opened.closed ?? []).map(opened.shown));
    this.#same = first?.same ?? 0;
    this.#hasSameParts = first?.hasSameParts ?? false;
  }

  read(): LoadedVersion | Failure {
    const { called, single, paths, load } = this.#opened;
    const parts: string[] = [];
    for (const path of paths) {
      if (this.#isReadInFirst(path)) continue;
      const file = load(path);
      if (isPart(file)) {
        parts.push(path);
        continue;
      }
      const failed = this.#take(path, file);
      if (failed) return failed;
    }
    for (const path of parts) {
      const failed = this.#take(path, load(path), true);
      if (failed) return failed;
    }
    return {
      called,
      single,
      schedules: this.#schedules,
      same: this.#same,
      hasSameParts: this.#hasSameParts,
      failures: this.#failures,
      isUnread: (path) => partsAbove(path).some((part) => this.#unread.has(part)),
    };
  }

  #isEqual(path: string): boolean {
    return this.#equal.has(this.#opened.shown(path));
  }

  #isReadInFirst(path: string): boolean {
    if (!this.#first || !this.#isEqual(path)) return false;
    for (const one of withUsed(path, this.#opened.usesOf)) this.#used.add(one);
    return true;
  }

  /** Of several files one that cannot be read is left out, and reported. */
  #take(path: string, file: LoadedFile | Failure, part = false): Failure | undefined {
    const failed = "failure" in file ? file : this.#add(file, part);
    if (!failed || this.#opened.single) return failed;
    this.#failures.push(failed.failure);
    this.#unread.add(this.#opened.shown(path));
    return undefined;
  }

  #add(file: LoadedFile, part: boolean): Failure | undefined {
    const { sources, shown, single, release } = this.#opened;
    // A part is compared in the installations it is in.
    if (this.#used.has(file.path)) return undefined;
    const { files, findings, unread } = gather(file, sources);
    if (files.some(isNewer))
      return {
        failure: `“${shown(file.path)}” is in a newer version of the language than ${languageVersion}: get a newer program.`,
      };
    for (const { path } of files) this.#used.add(path);
    this.#failures.push(...findings.map(({ message }) => message));
    const kept = part && !files.some(hasContent) ? [] : this.#schedulesOf(file, files, unread, part);
    if (this.#isEqual(file.path)) {
      this.#same += kept.length;
      this.#hasSameParts ||= part && kept.length > 0;
    } else this.#schedules.push(...kept);
    if (!single) release(file.path);
    return undefined;
  }

  /** Of what it uses the installations are compared where they are written. */
  #schedulesOf(file: LoadedFile, files: readonly LoadedFile[], unread: boolean, part: boolean): Schedule[] {
    const { sources, shown, contentOf } = this.#opened;
    const content = files.map(({ path }) => contentOf(path)).join("\n");
    const size = sizeOf(file.document);
    return installationsWritten(file, files, unread, sources.engine).map(({ head: { title } }, index) => ({
      path: shown(file.path),
      title,
      content,
      size,
      texts: () => textsOf(file.path, part ? "part" : index, this.#opened),
      ...(part ? { isPart: part } : {}),
    }));
  }
}

/** A file without an installation, which others use. */
const isPart = (file: LoadedFile | Failure): boolean => !("failure" in file) && file.model.installations.length === 0;

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
  const { next: uses, ...file } = own(root);
  const seen = new Set([root, ...uses]);
  const used: VersionFile[] = [];
  for (const path of seen) {
    if (path === root) continue;
    const { next, ...file } = own(path);
    for (const one of next) seen.add(one);
    used.push(file);
  }
  if (!single) release(root);
  return { files: [file, ...used], index };
}
