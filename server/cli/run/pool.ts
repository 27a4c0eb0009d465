/** Threads that check tasks side by side, each with one batch in hand and one waiting. */
import { Worker } from "node:worker_threads";
import type { WorkerAnswer, WorkerStart } from "./worker.ts";

type Result<R> = R | { readonly failure: string };

interface Batch<T, R> {
  readonly tasks: readonly T[];
  readonly done: (results: readonly Result<R>[]) => void;
}

interface Thread<T, R> {
  readonly worker: Worker;
  readonly batches: Map<number, Batch<T, R>>;
}

const mostAtOnce = 2;

/**
 * What is made for a schedule is let go of with it. A young generation of the usual size only grows to where that is
 * more than a processor has at hand: this takes a hundred megabytes less of each thread, and no more time.
 */
const resourceLimits = { maxYoungGenerationSizeMb: 24 };

export class Pool<T, R> {
  readonly #file: string;
  readonly #start: WorkerStart;
  readonly #threads: Thread<T, R>[] = [];
  readonly #waiting: Batch<T, R>[] = [];
  #count = 0;
  #closed = false;

  /** `file`: the program that a thread runs. */
  constructor(file: string, start: WorkerStart) {
    this.#file = file;
    this.#start = start;
  }

  /** There are so many threads from now on, where there were fewer. */
  grow(count: number): void {
    while (this.#threads.length < count) this.#threads.push(this.#thread());
    this.#hand();
  }

  /** The results of some tasks, in their order. A task whose thread came down has a failure. */
  async run(tasks: readonly T[]): Promise<readonly Result<R>[]> {
    return await new Promise((done) => {
      this.#waiting.push({ tasks, done });
      this.#hand();
    });
  }

  async close(): Promise<void> {
    this.#closed = true;
    await Promise.all(this.#threads.map(({ worker }) => worker.terminate()));
  }

  #hand(): void {
    for (;;) {
      const [least] = this.#threads.toSorted((a, b) => a.batches.size - b.batches.size);
      const batch = least && least.batches.size < mostAtOnce ? this.#waiting.shift() : undefined;
      if (!least || !batch) return;
      const id = this.#count++;
      least.batches.set(id, batch);
      least.worker.postMessage({ id, tasks: batch.tasks });
    }
  }

  #thread(): Thread<T, R> {
    const worker = new Worker(this.#file, { workerData: this.#start, execArgv: [], resourceLimits });
    const thread: Thread<T, R> = { worker, batches: new Map() };
    let reason = "its thread ended";
    worker.on("message", ({ id, results }: WorkerAnswer<Result<R>>) => {
      const batch = thread.batches.get(id);
      thread.batches.delete(id);
      batch?.done(results);
      this.#hand();
    });
    worker.on("error", (error: NodeJS.ErrnoException) => {
      reason = error.code === "ERR_WORKER_OUT_OF_MEMORY" ? "there was not enough memory" : String(error.message);
    });
    worker.on("exit", () => this.#replace(thread, reason));
    return thread;
  }

  /** The first task in hand brought the thread down, as far as can be told; the others are tried again by another. */
  #replace(thread: Thread<T, R>, reason: string): void {
    if (this.#closed) return;
    const [first, ...others] = thread.batches.values();
    this.#threads[this.#threads.indexOf(thread)] = this.#thread();
    this.#waiting.unshift(...others);
    if (first && first.tasks.length === 1) first.done([{ failure: `could not be checked: ${reason}.` }]);
    else if (first) void this.#oneByOne(first);
    this.#hand();
  }

  async #oneByOne({ tasks, done }: Batch<T, R>): Promise<void> {
    done((await Promise.all(tasks.map((task) => this.run([task])))).flat());
  }
}
