/**
 * What a run has to check: which files belong together, told from their texts alone and without reading them as
 * schedules, so that the reading can be left to other threads or be spared.
 */
import { hash } from "node:crypto";
import { linksOf } from "../../model/file.ts";
import type { Membership } from "../../results/join.ts";
import { documentOf } from "../../syntax/document.ts";
import { UseGraph } from "../../workspace/use-graph.ts";
import type { UseSummary } from "../../workspace/uses.ts";
import type { Disk } from "../files.ts";

/** One schedule to be checked, with all it uses. */
export interface Task {
  /** The paths of its files, the one that checking begins in first; those that could not be read are among them. */
  readonly files: readonly [root: string, ...used: string[]];
  /** What its result follows from: the contents of its files, under the names the result gives them. */
  readonly content: string;
  /** Characters of text. */
  readonly size: number;
}

/** How results are made: what they call a file, and whether a register is wanted. */
export interface TaskDetail {
  readonly nameOf: (path: string) => string;
  readonly register: boolean;
}

export interface Plan {
  /** In the order of the files that were asked for. */
  readonly tasks: readonly Task[];
  readonly members: Membership;
  /** How many files could be read. */
  readonly files: number;
  /** Files that belong to more than one task. */
  readonly shared: ReadonlySet<string>;
}

export interface Scanned {
  readonly graph: UseGraph;
  readonly sizes: ReadonlyMap<string, number>;
}

/** So many characters are kept of what was read, for a run that checks in this thread. */
const mostKept = 8_000_000;

/** Reads what was asked for and all it uses, a file at a time, and keeps little more of it than what uses what. */
export class Scan implements Scanned {
  readonly graph = new UseGraph();
  readonly sizes = new Map<string, number>();
  readonly #disk: Disk;
  #kept = 0;

  constructor(disk: Disk) {
    this.#disk = disk;
  }

  /** A file that can be read, with all it uses. */
  add(path: string): void {
    const pending = [path];
    for (let next = pending.pop(); next !== undefined; next = pending.pop()) pending.push(...this.#addOne(next));
  }

  #addOne(path: string): readonly string[] {
    const disk = this.#disk;
    const read = this.graph.has(path) ? { failure: "" } : disk.usedText(path);
    if ("failure" in read) return [];
    const { text } = read;
    const uses = usesIn(text).map((use) => disk.resolve(path, use));
    this.sizes.set(path, text.length);
    this.graph.set(
      path,
      summaryOf(uses, () => disk.usedText(path)),
    );
    this.#kept += text.length;
    if (this.#kept > mostKept) disk.release(path);
    return uses;
  }
}

/** Whether there is an installation is asked only of files that others use, and answered by dividing the whole text. */
function summaryOf(uses: readonly string[], read: () => { text: string } | { failure: string }): UseSummary {
  let known: boolean | undefined;
  return {
    uses,
    get hasInstallation() {
      if (known === undefined) {
        const now = read();
        known = "text" in now && linksOf(documentOf(now.text).segments).hasInstallation;
      }
      return known;
    },
  };
}

/** Lines before the first block: blank ones, comments, and the two statements that begin a file. */
const opening = /^(?:[^\S\r\n]*(?:#[^\r\n]*|(?:wayfile|use)\b[^\r\n{}]*)?(?:\r\n?|\n|$))*/;
const mayUse = /\buse\b[^\r\n]*"/;

/** What a text uses. Nearly always its first lines say it all; else it is divided as checking divides it. */
export function usesIn(text: string): readonly string[] {
  if (!mayUse.test(text)) return [];
  const lines = opening.exec(text)?.[0] ?? "";
  const part = mayUse.test(text.slice(lines.length)) ? text : lines;
  return linksOf(documentOf(part).segments).uses;
}

/** The schedules to be checked. */
export function planOf({ graph, sizes }: Scanned, asked: Iterable<string>, disk: Disk, detail: TaskDetail): Plan {
  const { nameOf } = detail;
  const roots = graph.roots;
  const order = new Map(roots.map((root, index) => [nameOf(root), index]));
  const isRoot = new Set(roots);
  const inOrder = [...new Set([...[...asked].filter((path) => isRoot.has(path)), ...roots])];
  const counts = new Map<string, number>();
  const tasks = inOrder.map((root): Task => {
    const files = closureOf(root, graph);
    for (const path of files) counts.set(path, (counts.get(path) ?? 0) + 1);
    return {
      files,
      content: contentOf(files, disk, detail),
      size: files.reduce((sum, path) => sum + (sizes.get(path) ?? 0), 0),
    };
  });
  const shared = new Set([...counts].flatMap(([path, count]) => (count > 1 ? [path] : [])));
  const byName = new Map([...shared].map((path) => [nameOf(path), counts.get(path) ?? 1]));
  return {
    tasks,
    members: { schedulesOf: (name) => byName.get(name) ?? 1, orderOf: (name) => order.get(name) ?? roots.length },
    files: sizes.size,
    shared,
  };
}

function closureOf(root: string, graph: UseGraph): [string, ...string[]] {
  const files = new Set([root]);
  for (const path of files) for (const used of graph.get(path).uses) files.add(used);
  const [, ...used] = files;
  return [root, ...used];
}

/** What tells what a task's result follows from. */
export function contentOf(files: readonly string[], disk: Disk, { nameOf, register }: TaskDetail): string {
  const parts = files.map((path) => `${nameOf(path)}\0${disk.contentOf(path)}`);
  return hash("sha256", [...(register ? ["register"] : []), ...parts].join("\0\0"), "base64url");
}
