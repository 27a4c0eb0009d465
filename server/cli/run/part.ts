/**
 * The result of one shard as a file: a line that says of what it is a part, one for each schedule, and a last one without
 * which it was cut off. `gather` puts the parts of one run together; parts of different runs are told apart.
 */
import { hash } from "node:crypto";
import manifest from "../../../package.json" with { type: "json" };
import type { Membership } from "../../results/join.ts";
import type { Disk } from "../files.ts";
import type { TaskResult } from "./judge-task.ts";
import { contentOf, type Plan, type TaskDetail } from "./plan.ts";
import type { Shard } from "./shard.ts";

export interface PartHead {
  readonly part: 1;
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

export interface PartEnd {
  readonly end: true;
  /** What could not be read before any schedule was checked. */
  readonly failures: readonly string[];
  readonly interrupted: boolean;
}

export const headOf = (plan: Plan, shard: Shard, disk: Disk, detail: TaskDetail): PartHead => ({
  part: 1,
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

export interface Part {
  readonly head: PartHead;
  readonly lines: readonly PartLine[];
  readonly end: PartEnd;
}

/** A part as it was written, or the end of a sentence that says why it is none. */
export function readPart(text: string): Part | { readonly failure: string } {
  const rows = text.split("\n").filter((row) => row !== "");
  const values = rows.map(parsed);
  const [head] = values;
  const end = values.at(-1);
  if (!isRecord(head) || head.part !== 1)
    return { failure: "it is not a part of a run, as “wayfile check --shard” writes it." };
  if (!isRecord(end) || end.end !== true) return { failure: "it was cut off: run that shard again." };
  const lines = values.slice(1, -1);
  if (!lines.every((line) => isRecord(line) && typeof line.task === "number" && isRecord(line.result))) {
    return { failure: "it is damaged: run that shard again." };
  }
  return { head: head as unknown as PartHead, lines: lines as unknown as PartLine[], end: end as unknown as PartEnd };
}

function parsed(row: string): unknown {
  try {
    return JSON.parse(row);
  } catch {
    return undefined;
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null;
