/** Runs a plan: from the cache what it holds, and the rest in this thread where it is little, else by several. */
import type { ScheduleResult } from "../../results/result.ts";
import type { Disk } from "../files.ts";
import { Cache, type CachePlace } from "./cache.ts";
import { judgeTask, type TaskResult } from "./judge-task.ts";
import type { Plan, Task, TaskDetail } from "./plan.ts";
import { Pool } from "./pool.ts";

export interface RunOptions {
  readonly cwd: string;
  readonly detail: TaskDetail;
  readonly cache: CachePlace | undefined;
  /** How many threads there is room for, and how many were asked for. With one, all is checked in this thread. */
  readonly threads: { readonly room: number; readonly wanted: number | undefined };
  /** The program that a thread runs; without it, all is checked in this thread. */
  readonly program: string | undefined;
  readonly signal: AbortSignal;
}

export interface Ran {
  readonly task: Task;
  readonly result: TaskResult;
  readonly cached: boolean;
}

/** Starting a thread costs as much as checking so many characters. */
const worthAThread = 200_000;

/** The results of a plan in the order of its tasks, each as soon as it and those before it are there. */
export async function* run(plan: Plan, disk: Disk, options: RunOptions): AsyncGenerator<Ran> {
  const cache = options.cache && new Cache(options.cache);
  const isKept = plan.tasks.map((task) => cache?.has(task.content) ?? false);
  const open = plan.tasks.reduce((sum, { size }, index) => sum + (isKept[index] ? 0 : size), 0);
  const { room, wanted } = options.threads;
  const threads = Math.min(
    wanted ?? Math.min(room, Math.ceil(open / worthAThread)),
    open === 0 ? 1 : plan.tasks.length,
  );
  const { register } = options.detail;
  const start = { register, cwd: options.cwd, folders: disk.folders, lent: disk.lent, shared: plan.shared };
  const pool =
    threads > 1 && options.program !== undefined
      ? new Pool(options.program, threads, { ...start, ...(options.cache ? { cache: options.cache } : {}) })
      : undefined;
  const here = (task: Task): TaskResult => {
    const result = judgeTask(task, disk, options.detail, cache);
    for (const path of task.files) if (!plan.shared.has(path)) disk.release(path);
    return result;
  };
  const read = (task: Task, kept: boolean): ScheduleResult | undefined =>
    kept ? cache?.read(task.content) : undefined;
  try {
    if (pool) yield* side(plan.tasks, { isKept, read, here, pool, signal: options.signal });
    else {
      for (const [index, task] of plan.tasks.entries()) {
        if (options.signal.aborted) return;
        const known = read(task, isKept[index] ?? false);
        yield { task, result: known ?? here(task), cached: known !== undefined };
      }
    }
  } finally {
    await pool?.close();
  }
}

/** So much is handed to a thread at once, and so many batches are under way or wait for one before them. */
const batchSize = 150_000;
const firstBatch = 10_000;
const mostBatches = 16;
/** So much is checked in this thread while the others start. */
const meanwhile = 30_000;

/** How many of the first tasks come to so many characters. */
function countOf(tasks: readonly Task[], size: number): number {
  let left = size;
  const past = tasks.findIndex((task) => {
    left -= task.size;
    return left < 0;
  });
  return past < 0 ? tasks.length : past;
}

interface Handed {
  readonly tasks: readonly Task[];
  readonly results: Promise<readonly TaskResult[]> | undefined;
}

interface Side {
  readonly isKept: readonly boolean[];
  readonly read: (task: Task, kept: boolean) => ScheduleResult | undefined;
  readonly here: (task: Task) => TaskResult;
  readonly pool: Pool;
  readonly signal: AbortSignal;
}

async function* side(tasks: readonly Task[], { isKept, read, here, pool, signal }: Side): AsyncGenerator<Ran> {
  const aborted = new Promise<undefined>((resolve) => signal.addEventListener("abort", () => resolve(undefined)));
  const handed: Handed[] = [];
  // The first results are worked out here while the threads start, so that nobody waits for them.
  let next = countOf(tasks, meanwhile);
  const own = tasks.slice(0, next);
  let size = firstBatch;
  const hand = (): void => {
    const kept = isKept[next] ?? false;
    const batch: Task[] = [];
    let room = size;
    for (let task = tasks[next]; task && room > 0 && (isKept[next] ?? false) === kept; task = tasks[next]) {
      batch.push(task);
      room -= task.size;
      next++;
    }
    size = Math.min(size * 2, batchSize);
    handed.push({ tasks: batch, results: kept ? undefined : pool.run(batch) });
  };
  while (next < tasks.length && handed.length < mostBatches) hand();
  for (const [index, task] of own.entries()) {
    if (signal.aborted) return;
    const known = read(task, isKept[index] ?? false);
    yield { task, result: known ?? here(task), cached: known !== undefined };
  }
  while (!signal.aborted) {
    while (next < tasks.length && handed.length < mostBatches) hand();
    const first = handed.shift();
    if (!first) return;
    const results = first.results && (await Promise.race([first.results, aborted]));
    for (const [index, task] of first.tasks.entries()) {
      const known = first.results ? results?.[index] : read(task, true);
      // An entry that turned out to be damaged is checked like the others.
      const result = known ?? (signal.aborted ? undefined : (await pool.run([task]))[0]);
      if (!result) return;
      yield { task, result, cached: first.results === undefined && known !== undefined };
    }
  }
}
