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
import type { Making } from "./made.ts";

/** One schedule to be checked, with all it uses. */
export interface Task {
  /** The paths of its files, the one that checking begins in first; those that could not be read are among them. */
  readonly files: readonly [root: string, ...used: string[]];
  /** Bytes of text. */
  readonly size: number;
}

/** With what its result follows from: the contents of its files, under the names the result gives them. */
export interface KeyedTask extends Task {
  /** Empty where results are not kept. */
  readonly content: string;
}

/** How results are made: what is wanted of each schedule, and what they call a file. */
export interface TaskDetail<M extends Making = Making> extends Naming {
  readonly making: M;
}

interface Naming {
  readonly nameOf: (path: string) => string;
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

interface Scanned {
  readonly graph: UseGraph;
  readonly sizes: ReadonlyMap<string, number>;
}

/** So many characters are kept of what was read, for a run that checks in this thread. */
const mostKept = 8_000_000;

/** Reads what was asked for and all it uses, a file at a time, and keeps little more of it than what uses what. */
export class Scan implements Scanned {
  readonly graph = new UseGraph();
  readonly sizes = new Map<string, number>();
  readonly #uses = usesByOpening();
  readonly #disk: Disk;
  #kept = 0;

  constructor(disk: Disk) {
    this.#disk = disk;
  }

  /**
   * A file that was asked for, with all it uses, or why it cannot be read. Of one that is `plain`, listed by its folder
   * and no link, no text is made unless it uses others.
   */
  addNamed(path: string, plain: boolean): { readonly failure: string } | undefined {
    if (this.graph.has(path)) return undefined;
    const bytes = plain ? this.#disk.bytesOfPlain(path) : undefined;
    if (bytes) {
      const uses =
        bytes.includes("use") && mayUse.test(bytes.toString("latin1")) ? this.#uses(bytes.toString("utf8")) : [];
      this.#addUsed(this.#set(path, bytes.length, uses));
      return undefined;
    }
    const text = this.#disk.namedText(path);
    if ("failure" in text) return text;
    this.add(path);
    return undefined;
  }

  /** A file that can be read, with all it uses. */
  add(path: string): void {
    this.#addUsed([path]);
  }

  #addUsed(paths: readonly string[]): void {
    const pending = [...paths];
    for (let next = pending.pop(); next !== undefined; next = pending.pop()) pending.push(...this.#addOne(next));
  }

  #addOne(path: string): readonly string[] {
    const read = this.graph.has(path) ? { failure: "" } : this.#disk.usedText(path);
    if ("failure" in read) return [];
    const { text } = read;
    this.#kept += text.length;
    const used = this.#set(path, Buffer.byteLength(text), mayUse.test(text) ? this.#uses(text) : []);
    if (this.#kept > mostKept) this.#disk.release(path);
    return used;
  }

  #set(path: string, size: number, uses: readonly string[]): readonly string[] {
    const used = uses.length > 0 ? uses.map((use) => this.#disk.resolve(path, use)) : uses;
    this.sizes.set(path, size);
    this.graph.set(path, new Summary(used, path, this.#disk));
    return used;
  }
}

/** Whether there is an installation is asked only of files that others use, and answered by dividing the whole text. */
class Summary implements UseSummary {
  readonly uses: readonly string[];
  readonly #path: string;
  readonly #disk: Disk;
  #known: boolean | undefined;

  constructor(uses: readonly string[], path: string, disk: Disk) {
    this.uses = uses;
    this.#path = path;
    this.#disk = disk;
  }

  get hasInstallation(): boolean {
    if (this.#known === undefined) {
      const now = this.#disk.usedText(this.#path);
      this.#known = "text" in now && linksOf(documentOf(now.text).segments).hasInstallation;
    }
    return this.#known;
  }
}

/** Lines before the first block: blank ones, comments, and the two statements that begin a file. */
const opening = /^(?:[^\S\r\n]*(?:#[^\r\n]*|(?:wayfile|use)\b[^\r\n{}]*)?(?:\r\n?|\n|$))*/;
const mayUse = /\buse\b[^\r\n]*"/;

/** What a text uses. Nearly always its first lines say it all; else it is divided as checking divides it. */
export const usesIn = (text: string): readonly string[] => (mayUse.test(text) ? usesByOpening()(text) : []);

/** The same of many texts that may use others: they often begin alike. */
function usesByOpening(): (text: string) => readonly string[] {
  const known = new Map<string, readonly string[]>();
  return (text) => {
    const lines = opening.exec(text)?.[0] ?? "";
    if (mayUse.test(text.slice(lines.length))) return linksOf(documentOf(text).segments).uses;
    const uses = known.get(lines) ?? linksOf(documentOf(lines).segments).uses;
    if (known.size < mostOpenings) known.set(lines, uses);
    return uses;
  };
}

const mostOpenings = 1_000;

/** Files that are each a task of their own, whatever they use. */
export const apart = (tasks: readonly Task[]): Plan => ({
  tasks,
  members: { schedulesOf: () => 1, orderOf: () => 0 },
  files: tasks.length,
  shared: new Set(),
});

/** The schedules to be checked. */
export function planOf({ graph, sizes }: Scanned, asked: Iterable<string>, { nameOf }: Naming): Plan {
  const roots = graph.roots;
  const isRoot = new Set(roots);
  const inOrder = [...new Set([...[...asked].filter((path) => isRoot.has(path)), ...roots])];
  const counts = new Map<string, number>();
  const tasks = inOrder.map((root): Task => {
    const files = closureOf(root, graph);
    for (const path of files) if (graph.isUsed(path)) counts.set(path, (counts.get(path) ?? 0) + 1);
    return {
      files,
      size: files.reduce((sum, path) => sum + (sizes.get(path) ?? 0), 0),
    };
  });
  const shared = new Set([...counts].flatMap(([path, count]) => (count > 1 ? [path] : [])));
  return {
    tasks,
    members: membersIn(
      roots,
      [...shared].map((path) => [nameOf(path), counts.get(path) ?? 1]),
      nameOf,
    ),
    files: sizes.size,
    shared,
  };
}

/** The order of schedules is asked only of those that share a file. */
function membersIn(
  roots: readonly string[],
  shared: readonly (readonly [name: string, count: number])[],
  nameOf: (path: string) => string,
): Membership {
  const counts = new Map(shared);
  let orders: ReadonlyMap<string, number> | undefined;
  return {
    schedulesOf: (name) => counts.get(name) ?? 1,
    orderOf: (name) => {
      orders ??= new Map(roots.map((root, index) => [nameOf(root), index]));
      return orders.get(name) ?? roots.length;
    },
  };
}

function closureOf(root: string, graph: UseGraph): [string, ...string[]] {
  // Nearly every schedule uses nothing.
  if (graph.get(root).uses.length === 0) return [root];
  const files = new Set([root]);
  for (const path of files) for (const used of graph.get(path).uses) files.add(used);
  const [, ...used] = files;
  return [root, ...used];
}

/** What tells what a task's result follows from, whatever is made of it. */
export function contentOf(files: readonly string[], disk: Disk, { nameOf }: Naming): string {
  const parts = files.map((path) => `${nameOf(path)}\0${disk.contentOf(path)}`);
  return hash("sha256", parts.join("\0\0"), "base64url");
}
