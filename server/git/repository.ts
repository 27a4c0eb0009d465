/** A git repository as it is read: its revisions, the files of each, and what changed between two. */
import { realpathSync } from "node:fs";
import path from "node:path";
import { type GitFailure, type GitOptions, git, isRevision, partial } from "./run.ts";

/** A commit by its full name, the index (what is staged), or nothing: the empty tree. */
export type Revision = { readonly commit: string } | { readonly index: true };

interface Commit {
  readonly id: string;
  readonly author: string;
  /** The author's time, as 2026-03-05T10:12:00+00:00. */
  readonly when: string;
  readonly subject: string;
}

/** A commit that changed a file, with the name the file had there and in the commits before. */
export interface FileCommit extends Commit {
  readonly parents: readonly string[];
  /** From the top of the repository. */
  readonly path: string;
  readonly before: string;
}

type Contents = ReadonlyMap<string, Buffer>;

export class Repository {
  /** The top folder of the working tree, links resolved; of a bare repository its own folder. */
  readonly root: string;

  private constructor(root: string) {
    this.root = root;
  }

  /** The repository a folder lies in. */
  static async round(folder: string): Promise<Repository | GitFailure> {
    const found = await git(folder, ["rev-parse", "--show-toplevel"]);
    if ("out" in found) return new Repository(real(lineOf(found.out)));
    const bare = await git(folder, ["rev-parse", "--is-bare-repository", "--absolute-git-dir"]);
    const [isBare, own] = "out" in bare ? lineOf(bare.out).split("\n") : [];
    return isBare === "true" && own ? new Repository(real(own)) : found;
  }

  /** A path of the file system as the repository has it, with slashes; nothing for one outside. */
  inside(file: string): string | undefined {
    const relative = path.relative(this.root, realOfNew(file));
    if (relative.startsWith("..") || path.isAbsolute(relative)) return undefined;
    return relative.split(path.sep).join("/");
  }

  /** The file of the working tree that a path of the repository names. */
  outside(inside: string): string {
    return path.join(this.root, ...inside.split("/"));
  }

  /** The commit a revision names: `HEAD~3`, `main`, a tag. */
  async commit(revision: string): Promise<{ readonly commit: string } | GitFailure> {
    if (!isRevision(revision)) return { failure: `“${revision}” is no revision.` };
    const found = await this.#git(["rev-parse", "--verify", "--quiet", `${revision}^{commit}`]);
    if ("failure" in found)
      return { failure: `There is no revision “${revision}” in this repository.${await this.whereItMayBe()}` };
    return { commit: lineOf(found.out) };
  }

  /** The commit that two have in common; nothing where there is none. */
  async mergeBase(a: string, b: string): Promise<string | undefined> {
    const found = await this.#git(["merge-base", a, b]);
    return "failure" in found ? undefined : lineOf(found.out);
  }

  /** Paths of the files of a revision that end with `ending`, below a folder. */
  async files(revision: Revision, ending: string, below = ""): Promise<readonly string[] | GitFailure> {
    const where = below === "" || below === "." ? [] : ["--", below];
    const found =
      "index" in revision
        ? await this.#git(["ls-files", "-z", "--cached", ...where])
        : await this.#git(["ls-tree", "-r", "-z", "--name-only", "--full-tree", revision.commit, ...where]);
    if ("failure" in found) return found;
    return [...new Set(namesIn(found.out))].filter((name) => name.endsWith(ending));
  }

  /** What files hold in a revision, by path; one that is not there is left out. One process for all of them. */
  async contents(revision: Revision, paths: readonly string[]): Promise<Contents | GitFailure> {
    const asked = paths.filter((one) => !/[\0\r\n]/.test(one));
    const from = "index" in revision ? ":0:" : `${revision.commit}:`;
    const objects = await this.objects(asked.map((one) => `${from}${one}`));
    if ("failure" in objects) return objects;
    return new Map(
      asked.flatMap((one, index) => (objects.bodies[index] ? [[one, objects.bodies[index]] as const] : [])),
    );
  }

  /** What objects hold, in the order they were named in; nothing for one that is no file or is not there. */
  async objects(names: readonly string[]): Promise<{ readonly bodies: readonly (Buffer | undefined)[] } | GitFailure> {
    if (names.length === 0) return { bodies: [] };
    const found = await this.#git(["cat-file", "--batch"], { input: names.map((name) => `${name}\n`).join("") });
    if ("failure" in found) return found;
    const bodies = bodiesIn(found.out, names.length);
    const isLacking = await this.#isLacking(names.filter((_, index) => !bodies[index]));
    return isLacking ? { failure: partial } : { bodies };
  }

  /** Whether one of the objects is known here and not there: git reports it missing, as it does one that never was. */
  async #isLacking(missing: readonly string[]): Promise<boolean> {
    if (missing.length === 0) return false;
    const promised = await this.#git(["config", "--get-regexp", "^remote\\..*\\.promisor$"]);
    if ("failure" in promised) return false;
    for (const name of missing) {
      const found = await this.#git(["rev-parse", "--verify", "--quiet", name]);
      const kind = "out" in found ? await this.#git(["cat-file", "-t", lineOf(found.out)]) : undefined;
      if (kind && "failure" in kind) return true;
    }
    return false;
  }

  /**
   * The commits that changed a file, the latest first, followed through its renames. A merge is one of them where the
   * file is as neither of its sides had it.
   */
  async commitsOf(file: string, until: string): Promise<readonly FileCommit[] | GitFailure> {
    const plain = ["--no-ext-diff", "--no-textconv", "--no-color", "-z", "-c", "--name-status"];
    const format = "--format=%x01%H%x00%P%x00%an%x00%aI%x00%s";
    const found = await this.#git(["log", "--follow", ...plain, format, until, "--", file]);
    return "failure" in found ? found : commitsIn(found.out, file);
  }

  /** Paths that differ between two revisions, also those that were deleted; renames are both of their names. */
  async changed(from: string, to: Revision): Promise<readonly string[] | GitFailure> {
    const plain = ["-z", "--name-only", "--no-renames", "--no-ext-diff", "--no-color"];
    const found =
      "index" in to
        ? await this.#git(["diff-index", "--cached", ...plain, from, "--"])
        : await this.#git(["diff-tree", "-r", ...plain, from, to.commit, "--"]);
    return "failure" in found ? found : namesIn(found.out);
  }

  /** What a person can do about a revision that is not here, as another sentence; nothing where the copy is whole. */
  async whereItMayBe(): Promise<string> {
    const advice = "“git fetch --unshallow” brings the rest; in CI, have the whole history checked out.";
    return (await this.isShallow()) ? ` This copy of the repository is cut off: ${advice}` : "";
  }

  /** Whether the history of this copy ends before its beginning. */
  async isShallow(): Promise<boolean> {
    const found = await this.#git(["rev-parse", "--is-shallow-repository"]);
    return "out" in found && lineOf(found.out) === "true";
  }

  #git(args: readonly string[], options?: GitOptions) {
    return git(this.root, args, options);
  }
}

const lineOf = (out: Buffer): string => out.toString("utf8").replace(/\r?\n$/, "");

const namesIn = (out: Buffer): string[] =>
  out
    .toString("utf8")
    .split("\0")
    .filter((name) => name !== "");

function real(folder: string): string {
  try {
    return realpathSync.native(folder);
  } catch {
    return path.resolve(folder);
  }
}

/** A file that is not there any more lies where its folder is. */
const realOfNew = (file: string): string => path.join(real(path.dirname(path.resolve(file))), path.basename(file));

/** The bodies of a batch: a line with name, kind and size before each, or one that says that it is missing. */
function bodiesIn(out: Buffer, count: number): (Buffer | undefined)[] {
  const bodies: (Buffer | undefined)[] = [];
  let at = 0;
  while (bodies.length < count && at < out.length) {
    const end = out.indexOf(10, at);
    const [, kind, size] = /^\S+ (\w+) (\d+)$/.exec(out.subarray(at, end).toString("utf8")) ?? [];
    at = end + 1;
    if (size === undefined) bodies.push(undefined);
    else {
      const body = out.subarray(at, at + Number(size));
      bodies.push(kind === "blob" ? body : undefined);
      at += Number(size) + 1;
    }
  }
  return bodies;
}

/** Where a commit begins. An author or a subject can hold `\x01` and a name of a commit, but no `\0`. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: the format asks git for this sign
const commitStart = /\x01(?=[0-9a-f]{40,64}\0(?:[0-9a-f]{40,64}(?: [0-9a-f]{40,64})*)?\0)/;

/** A commit is `\x01id\0parents\0author\0when\0subject`, then how the file changed and its names before and after. */
function commitsIn(out: Buffer, file: string): FileCommit[] {
  let named = file;
  return out
    .toString("utf8")
    .split(commitStart)
    .filter((text) => /^[0-9a-f]{40,64}\0/.test(text))
    .map((text): FileCommit => {
      const [id = "", parents = "", author = "", when = "", subject = "", ...rest] = text.split("\0");
      const [status = "", ...names] = rest.map((one) => one.replace(/^\n/, "")).filter((one) => one !== "");
      const path = names.at(-1) ?? named;
      named = /^[RC]\d/.test(status) ? (names[0] ?? path) : path;
      return { id, parents: parents.split(" ").filter(Boolean), author, when, subject, path, before: named };
    });
}
