/**
 * Does many tasks one after another: what is kept is read, and the rest is done in this thread where it is little, else by
 * several. Each result comes as soon as it and those before it are there, so that nothing is held but what lies just ahead.
 */
import { Pool } from "./pool.ts";
import type { WorkerStart } from "./worker.ts";

export interface Threading {
  /** How many threads there is room for, and how many were asked for. With one, all is done in this thread. */
  readonly threads: { readonly room: number; readonly wanted: number | undefined };
  /** The program that a thread runs; without it, all is done in this thread. */
  readonly program: string | undefined;
  readonly signal: AbortSignal;
}

interface Sized {
  /** Bytes of text. */
  readonly size: number;
}

/** What is done to each of some tasks. `A`: a task as it is handed to a thread. */
interface Work<T extends Sized, A extends Ahead, R> {
  readonly tasks: readonly T[];
  /** Asked when the turn of a task comes near: nothing waits for those of all. */
  readonly ahead: (task: T) => A;
  readonly kept: (task: A) => R | undefined;
  readonly here: (task: A) => Result<R>;
  readonly start: WorkerStart;
}

interface Ahead extends Sized {
  readonly isKept: boolean;
}

type Result<R> = R | { readonly failure: string };

interface Done<A, R> {
  readonly task: A;
  readonly result: Result<R>;
  readonly cached: boolean;
}

/** Starting a thread costs as much as checking so many bytes. */
const worthAThread = 200_000;
/** So much is handed to a thread at once, and so many batches are under way or wait for one before them. */
const batchSize = 150_000;
const firstBatch = 10_000;
const mostBatches = 16;
/** So much is done in this thread while the others start, so that nobody waits for them. */
const meanwhile = 30_000;

/** The results in the order of the tasks. */
export async function* perform<T extends Sized, A extends Ahead, R>(
  work: Work<T, A, R>,
  options: Threading,
): AsyncGenerator<Done<A, R>> {
  const { signal } = options;
  const aborted = new Promise<undefined>((resolve) => signal.addEventListener("abort", () => resolve(undefined)));
  const upcoming = batchesOf<T, A, R>(work);
  const ahead: Batch<A, R>[] = [];
  const threads = new Threads<T, A, R>(work, options);
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
        const kept = task.isKept ? work.kept(task) : undefined;
        // An entry that turned out to be damaged is done like the others.
        yield { task, result: kept ?? results?.[index] ?? work.here(task), cached: kept !== undefined };
      }
    }
  } finally {
    await threads.close();
  }
}

interface Batch<A, R> {
  readonly tasks: readonly A[];
  /** Bytes that are to be done. */
  readonly open: number;
  /** Whether it is done in this thread, whatever others there are. */
  readonly isOwn: boolean;
  results?: Promise<readonly Result<R>[]>;
}

/** Of one batch all are kept, or none; but for the first, which this thread does. */
function* batchesOf<T extends Sized, A extends Ahead, R>({
  tasks,
  ahead,
}: Pick<Work<T, A, R>, "tasks" | "ahead">): Generator<Batch<A, R>, undefined> {
  let batch: A[] = [];
  let isOwn = true;
  let room = meanwhile;
  let size = firstBatch;
  const whole = (): Batch<A, R> => {
    const open = batch.reduce((sum, one) => sum + (one.isKept ? 0 : one.size), 0);
    return { tasks: batch, open, isOwn };
  };
  for (const task of tasks) {
    const next = ahead(task);
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
class Threads<T extends Sized, A extends Ahead, R> {
  readonly #options: Threading;
  readonly #start: WorkerStart;
  readonly #most: number;
  #open = 0;
  #pool: Pool<A, R> | undefined;

  constructor({ tasks, start }: Pick<Work<T, A, R>, "tasks" | "start">, options: Threading) {
    const { threads } = options;
    this.#options = options;
    this.#start = start;
    this.#most = Math.min(threads.wanted ?? threads.room, tasks.length);
  }

  expect({ open }: Batch<A, R>): void {
    this.#open += open;
  }

  hand(batches: readonly Batch<A, R>[]): void {
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
