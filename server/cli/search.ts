import { type Dirent, readdirSync, type Stats, statSync } from "node:fs";
import { join, relative, resolve, sep } from "node:path";
import { reasonOf } from "../disk/reasons.ts";
import { isSchedule } from "../disk/refusals.ts";
import { Ignored } from "./ignored.ts";
import type { Passing } from "./pattern.ts";

/** The files that arguments mean, each once and in their order, and a sentence for each argument that means none. */
interface SearchHit {
  /** Whether a folder lists it by this very name, and it is no link. */
  readonly files: ReadonlyMap<string, boolean>;
  /** Those that were asked for whole. */
  readonly folders: readonly string[];
  /** Those of which nobody knows what they hold. */
  readonly closed: readonly string[];
  readonly failures: readonly string[];
}

export async function findFiles(args: readonly string[], cwd: string, passing?: Passing): Promise<SearchHit> {
  const files = new Map<string, boolean>();
  const folders: string[] = [];
  const closed: string[] = [];
  const failures: string[] = [];
  const [only, ...others] = args;
  if (only !== undefined && others.length === 0) return await filesOf(only, cwd, passing);
  for (const arg of args) {
    const found = await filesOf(arg, cwd, passing);
    for (const [file, plain] of found.files) files.set(file, plain || (files.get(file) ?? false));
    folders.push(...found.folders);
    closed.push(...found.closed);
    failures.push(...found.failures);
  }
  return { files, folders, closed, failures };
}

async function filesOf(arg: string, cwd: string, passing: Passing | undefined): Promise<SearchHit> {
  const path = resolve(cwd, arg);
  const stat = statOf(path);
  if ("failure" in stat) {
    const files = signsOfPatterns.test(arg) ? (await import("./pattern.ts")).matching(arg, cwd, passing) : undefined;
    if (files && "failure" in files) return fail(`“${arg}” is not looked for: ${files.failure}`);
    if (files) return files.length > 0 ? { ...none, files: notPlain(files) } : fail(`No .ways files match “${arg}”.`);
    const missing = stat.failure === "there is no such file.";
    return fail(missing ? `There is no file or folder “${arg}”.` : `“${arg}” cannot be read: ${stat.failure}`);
  }
  return stat.isDirectory() ? schedulesIn(path, arg, passing) : oneFile(path);
}

/** Most arguments are names, and what reads patterns is loaded for others alone. */
const signsOfPatterns = /[*?[\]{}()!+@|\\]/;

const notPlain = (files: readonly string[]) => new Map(files.map((file) => [file, false]));

const none = { files: notPlain([]), folders: [], closed: [], failures: [] } satisfies SearchHit;

const oneFile = (path: string): SearchHit => ({ ...none, files: notPlain([path]) });

const fail = (sentence: string): SearchHit => ({ ...none, failures: [sentence] });

function statOf(path: string): Stats | { readonly failure: string } {
  try {
    return statSync(path);
  } catch (error) {
    return { failure: reasonOf(error) };
  }
}

function schedulesIn(folder: string, shown: string, passing: Passing | undefined): SearchHit {
  const ignored = new Ignored(folder);
  const files = new Map<string, boolean>();
  const closed: string[] = [];
  const failures: string[] = [];
  const isPassedOver = (path: string) => ignored.has(path, false) || (passing?.leavesOut(path, false) ?? false);
  const visit = (inner: string): void => {
    // Of a folder of thousands nothing is asked file by file where there is no rule at all.
    const mayPassOver = ignored.hasRules(inner) || (passing?.hasRules(inner) ?? false);
    const notRead = (reason: string): void => {
      closed.push(inner);
      failures.push(`“${join(shown, relative(folder, inner))}” cannot be read: ${reason}`);
    };
    for (const entry of entriesOf(inner, notRead)) {
      const path = inner.endsWith(sep) ? inner + entry.name : inner + sep + entry.name;
      // A folder behind a link is not followed: it may lead back, or out of the project.
      if (entry.isDirectory()) {
        if (!ignored.has(path, true) && !passing?.leavesOut(path, true)) visit(path);
      } else if (isSchedule(entry.name) && !(mayPassOver && isPassedOver(path)) && isFile(entry, path)) {
        files.set(path, !entry.isSymbolicLink());
      }
    }
  };
  visit(folder);
  if (files.size === 0 && failures.length === 0) {
    failures.push(`No .ways files in ${shown === "." ? "this folder" : `“${shown}”`}.`);
  }
  return { files, folders: [folder], closed, failures };
}

function entriesOf(folder: string, onFailure: (reason: string) => void): Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  } catch (error) {
    onFailure(reasonOf(error));
    return [];
  }
}

function isFile(entry: Dirent, path: string): boolean {
  if (!entry.isSymbolicLink()) return entry.isFile();
  // A link that leads nowhere is kept, so that reading it says so.
  const stat = statOf(path);
  return "failure" in stat || stat.isFile();
}
