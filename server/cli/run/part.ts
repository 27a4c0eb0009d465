/**
 * The result of one shard as a file: a line that says of what it is a part, one for each schedule, and a last one without
 * which it was cut off. `gather` puts the parts of one run together; parts of different runs are told apart. It holds no
 * part whole: it goes through the lines once for their sum, and then schedule by schedule.
 */
import { createHash, hash } from "node:crypto";
import { dirname } from "node:path";
import manifest from "../../../package.json" with { type: "json" };
import type { Membership } from "../../results/join.ts";
import type { Disk } from "../files.ts";
import type { TaskResult } from "./made.ts";
import { contentOf, type Plan, type TaskDetail } from "./plan.ts";
import type { Shard } from "./shard.ts";

export interface PartHead {
  readonly part: 2;
  readonly program: string;
  /** What tells this run from any other: all its files and what is in them. */
  readonly plan: string;
  readonly shard: Shard;
  readonly tasks: number;
  readonly files: number;
  /** Files of several schedules, with how many. */
  readonly shared: Readonly<Record<string, number>>;
}

export interface PartLine {
  /** The place of the schedule in the plan, and in the order in which messages name schedules. */
  readonly task: number;
  readonly order: number;
  readonly root: string;
  /** How many files it reads. */
  readonly files: number;
  readonly result: TaskResult;
}

interface PartEnd {
  readonly end: true;
  /** Of all lines before this one. */
  readonly sum: string;
  /** The folders of its schedules, by the names of results: what is set for them decides how they are reported. */
  readonly folders: readonly string[];
  /** What could not be read before any schedule was checked. */
  readonly failures: readonly string[];
  readonly interrupted: boolean;
}

export const headOf = (plan: Plan, shard: Shard, disk: Disk, detail: TaskDetail): PartHead => ({
  part: 2,
  program: manifest.version,
  plan: hash("sha256", plan.tasks.map(({ files }) => contentOf(files, disk, detail)).join("\n"), "hex").slice(0, 32),
  shard,
  tasks: plan.tasks.length,
  files: plan.files,
  shared: Object.fromEntries(
    [...plan.shared].map((path) => [detail.nameOf(path), plan.members.schedulesOf(detail.nameOf(path))] as const),
  ),
});

export const membersOf = (
  shared: Readonly<Record<string, number>>,
  orders: ReadonlyMap<string, number>,
): Membership => ({
  schedulesOf: (name) => (Object.hasOwn(shared, name) ? (shared[name] ?? 1) : 1),
  orderOf: (root) => orders.get(root) ?? 0,
});

/** Adds up what is written of a part, for its last line. */
export class PartSum {
  readonly #sum = createHash("sha256");
  readonly #folders = new Set<string>();

  add(line: string, root?: string): void {
    this.#sum.update(line);
    if (root !== undefined) this.#folders.add(dirname(root));
  }

  end(rest: Pick<PartEnd, "failures" | "interrupted">): PartEnd {
    return { end: true, sum: this.#sum.digest("hex"), folders: [...this.#folders], ...rest };
  }
}

export interface Part {
  readonly head: PartHead;
  readonly end: PartEnd;
  /** In the order of their tasks. */
  readonly lines: () => Iterable<PartLine>;
}

/** A part as it was written, or the end of a sentence that says why it is none. */
export function openPart(rows: () => Iterable<string>): Part | { readonly failure: string } {
  const sum = new PartSum();
  let first: string | undefined;
  let last: string | undefined;
  for (const row of rows()) {
    if (row === "") continue;
    if (last !== undefined) sum.add(`${last}\n`);
    first ??= row;
    last = row;
  }
  const head = parsed(first);
  if (!isRecord(head) || head.part !== 2)
    return { failure: "it is not a part of a run, as “wayfile check --shard” writes it." };
  const end = parsed(last);
  if (!isRecord(end) || end.end !== true) return { failure: "it was cut off: run that shard again." };
  if (end.sum !== sum.end({ failures: [], interrupted: false }).sum)
    return { failure: "it is damaged: run that shard again." };
  return { head: head as unknown as PartHead, end: end as unknown as PartEnd, lines: () => linesAmong(rows) };
}

function* linesAmong(rows: () => Iterable<string>): Generator<PartLine> {
  for (const row of rows()) {
    const line = parsed(row);
    if (isRecord(line) && typeof line.task === "number") yield line as unknown as PartLine;
  }
}

/** The lines of several parts in the order of the one run they are parts of. */
export function* merged(parts: readonly Part[]): Generator<PartLine> {
  const open = parts.map(({ lines }) => lines()[Symbol.iterator]());
  const next = open.map((one) => one.next());
  for (;;) {
    let least = -1;
    for (const [index, { done, value }] of next.entries()) {
      if (!done && (least < 0 || value.task < next[least]?.value.task)) least = index;
    }
    const [from, found] = [open[least], next[least]];
    if (!from || !found) return;
    yield found.value;
    next[least] = from.next();
  }
}

function parsed(row: string | undefined): unknown {
  try {
    return JSON.parse(row ?? "");
  } catch {
    return undefined;
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null;
