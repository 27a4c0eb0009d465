/** Runs a plan: from the cache what it holds, and the rest in this thread where it is little, else by several. */
import type { Disk } from "../files.ts";
import { Cache, type CachePlace } from "./cache.ts";
import { judgeTask, makerOf } from "./judge-task.ts";
import type { Making, TaskResult } from "./made.ts";
import { contentOf, type KeyedTask, type Plan, type Task, type TaskDetail } from "./plan.ts";
import { Pool } from "./pool.ts";
import type { WorkerStart } from "./worker.ts";

interface RunOptions<M extends Making> {
  readonly cwd: string;
  readonly detail: TaskDetail<M>;
  readonly cache: CachePlace | undefined;
  /** How many threads there is room for, and how many were asked for. With one, all is checked in this thread. */
  readonly threads: { readonly room: number; readonly wanted: number | undefined };
  /** The program that a thread runs; without it, all is checked in this thread. */
  readonly program: string | undefined;
  readonly signal: AbortSignal;
}

export interface Ran<M extends Making = "findings"> {
  readonly task: Task;
  readonly result: TaskResult<M>;
  readonly cached: boolean;
}

/** Starting a thread costs as much as checking so many bytes. */
const worthAThread = 200_000;
/** So much is handed to a thread at once, and so many batches are under way or wait for one before them. */
const batchSize = 150_000;
const firstBatch = 10_000;
const mostBatches = 16;
/** So much is checked in this thread while the others start, so that nobody waits for them. */
const meanwhile = 30_000;

/** The results of a plan in the order of its tasks, each as soon as it and those before it are there. */
export async function* run<M extends Making>(plan: Plan, disk: Disk, options: RunOptions<M>): AsyncGenerator<Ran<M>> {
  const { signal, detail } = options;
  const cache = options.cache && new Cache(options.cache);
  const aborted = new Promise<undefined>((resolve) => signal.addEventListener("abort", () => resolve(undefined)));
  const upcoming = batchesOf<M>(plan.tasks, (task) => aheadOf(task, disk, detail, cache));
  const ahead: Batch<M>[] = [];
  const threads = new Threads<M>(plan, disk, options);
  const made = makerOf(detail.making);
  const make = made instanceof Promise ? await made : made;
  const here = (task: KeyedTask): TaskResult<M> => {
    const result = judgeTask(task, disk, detail, make, cache);
    for (const path of task.files) if (!plan.shared.has(path)) disk.release(path);
    return result;
  };
  try {
    for (;;) {
      while (ahead.length < mostBatches) {
        const { value: batch } = upcoming.next();
        if (!batch) break;
        ahead.push(batch);
        threads.expect(batch);
      }
      threads.hand(ahead);
      const first = ahead.shift();
      if (!first) return;
      const results = first.results && (await Promise.race([first.results, aborted]));
      for (const [index, task] of first.tasks.entries()) {
        if (signal.aborted) return;
        const kept = task.isKept ? cache?.read(task.content, detail.making) : undefined;
        // An entry that turned out to be damaged is checked like the others.
        yield { task, result: kept ?? results?.[index] ?? here(task), cached: kept !== undefined };
      }
    }
  } finally {
    await threads.close();
  }
}

/** What a result is kept under is worked out for a task when its turn comes near: nothing waits for those of a whole plan. */
type AheadTask = KeyedTask & { readonly isKept: boolean };

function aheadOf(task: Task, disk: Disk, detail: TaskDetail, cache: Cache | undefined): AheadTask {
  const content = cache ? contentOf(task.files, disk, detail) : "";
  return { ...task, content, isKept: cache?.has(content, detail.making) ?? false };
}

interface Batch<M extends Making> {
  readonly tasks: readonly AheadTask[];
  /** Bytes that are to be checked. */
  readonly open: number;
  /** Whether it is checked in this thread, whatever others there are. */
  readonly isOwn: boolean;
  results?: Promise<readonly TaskResult<M>[]>;
}

/** Of one batch all are kept, or none; but for the first, which this thread does. */
function* batchesOf<M extends Making>(
  tasks: readonly Task[],
  aheadOf: (task: Task) => AheadTask,
): Generator<Batch<M>, undefined> {
  let batch: AheadTask[] = [];
  let isOwn = true;
  let room = meanwhile;
  let size = firstBatch;
  const whole = (): Batch<M> => {
    const open = batch.reduce((sum, one) => sum + (one.isKept ? 0 : one.size), 0);
    return { tasks: batch, open, isOwn };
  };
  for (const task of tasks) {
    const next = aheadOf(task);
    const [first] = batch;
    if (first && (room <= 0 || (!isOwn && first.isKept !== next.isKept))) {
      yield whole();
      if (!isOwn) size = Math.min(size * 2, batchSize);
      batch = [];
      isOwn = false;
      room = size;
    }
    batch.push(next);
    room -= next.size;
  }
  if (batch.length > 0) yield whole();
  return undefined;
}

/** The threads of a run: as many as what lies ahead is worth. */
class Threads<M extends Making> {
  readonly #options: RunOptions<M>;
  readonly #start: WorkerStart;
  readonly #most: number;
  #open = 0;
  #pool: Pool<M> | undefined;

  constructor({ tasks, shared }: Plan, { folders, lent }: Disk, options: RunOptions<M>) {
    const { cwd, cache, detail, threads } = options;
    this.#options = options;
    this.#start = { making: detail.making, cwd, folders, lent, shared, ...(cache ? { cache } : {}) };
    this.#most = Math.min(threads.wanted ?? threads.room, tasks.length);
  }

  expect({ open }: Batch<M>): void {
    this.#open += open;
  }

  hand(batches: readonly Batch<M>[]): void {
    const { program, threads } = this.#options;
    const worth = threads.wanted === undefined ? Math.ceil(this.#open / worthAThread) : this.#most;
    const count = this.#open === 0 ? 0 : Math.min(this.#most, worth);
    if (program === undefined || count <= 1) return;
    this.#pool ??= new Pool(program, this.#start);
    this.#pool.grow(count);
    for (const batch of batches) if (!batch.isOwn && batch.open > 0) batch.results ??= this.#pool.run(batch.tasks);
  }

  async close(): Promise<void> {
    await this.#pool?.close();
  }
}
