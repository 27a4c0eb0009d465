/** What arguments name: files, folders, revisions of git, the index or standard input, before anything is read. */
import { existsSync } from "node:fs";
import { posix, resolve } from "node:path";
import { Repository, type Revision } from "../git/repository.ts";
import type { Terminal } from "./terminal.ts";

export type Failure = { readonly failure: string };

/** What an argument means, before anything is read. */
export type Asked =
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

export interface VersionOptions {
  readonly stdinPath?: string;
}

/** What comes in is a version of the one file it is compared with: what it uses lies where that lies. */
export function fileBeside(asked: readonly Asked[]): string | undefined {
  const files = asked.flatMap((one) => {
    if (one.kind === "disk") return one.path.endsWith(".ways") ? [one.path] : [];
    return one.kind === "revision" && one.path?.endsWith(".ways") ? [one.repository.outside(one.path)] : [];
  });
  return files.length === 1 ? files[0] : undefined;
}

/** `main..site` is two revisions, `main...site` the second and what it has in common with the first. */
export async function spread(args: readonly string[], { cwd }: Terminal): Promise<readonly string[]> {
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

export async function askedFor(arg: string, cwd: string): Promise<Asked | Failure> {
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
export const workingTree = (asked: Asked | undefined, cwd: string): Asked => {
  const path = asked?.kind === "revision" && asked.path !== undefined ? asked.repository.outside(asked.path) : cwd;
  return { kind: "disk", called: "the files on the disk", path };
};

/** A revision that was named without a path is compared where the other is: its file, its folder, or this folder. */
export function withPaths(asked: readonly Asked[], cwd: string): readonly Asked[] {
  const other = asked.find((one) => one.kind === "disk");
  const named = asked.find((one) => one.kind === "revision" && one.path !== undefined);
  return asked.map((one) => {
    if (one.kind !== "revision" || one.path !== undefined) return one;
    const path =
      named?.kind === "revision" ? named.path : one.repository.inside(other?.kind === "disk" ? other.path : cwd);
    return { ...one, path: path ?? "" };
  });
}
