/** A thread that checks or compares what it is sent. */
import type { MessagePort } from "node:worker_threads";
import { Disk } from "../files.ts";
import { namesFrom } from "../names.ts";
import { Cache, type CachePlace } from "./cache.ts";
import { judgeTask, makerOf } from "./judge-task.ts";
import type { Making } from "./made.ts";
import type { KeyedTask } from "./plan.ts";

/** What a thread is told once. */
export type WorkerStart = (SchedulesStart | { readonly making: "comparison" }) & { readonly cache?: CachePlace };

interface SchedulesStart {
  readonly cwd: string;
  readonly folders: readonly string[];
  readonly lent: ReadonlyMap<string, string>;
  /** Files of several tasks, which are worth keeping from one to the next. */
  readonly shared: ReadonlySet<string>;
  readonly making: Making;
}

export interface WorkerAnswer<R> {
  readonly id: number;
  readonly results: readonly R[];
}

export async function work(port: MessagePort, start: WorkerStart): Promise<void> {
  const cache = start.cache && new Cache(start.cache);
  const done: (task: never) => unknown =
    start.making === "comparison" ? await comparing(cache) : await checking(start, cache);
  // What comes before somebody listens waits.
  port.on("message", ({ id, tasks }: { id: number; tasks: readonly never[] }) => {
    const results = tasks.map((task) => done(task));
    port.postMessage({ id, results } satisfies WorkerAnswer<unknown>);
  });
}

async function checking({ cwd, folders, lent, shared, making }: SchedulesStart, cache: Cache | undefined) {
  const disk = new Disk(cwd, folders);
  for (const [path, text] of lent) disk.lend(path, text);
  const detail = { nameOf: namesFrom(cwd).nameOf, making };
  const make = await makerOf(making);
  return (task: KeyedTask) => {
    const result = judgeTask(task, disk, detail, make, cache);
    disk.forget((path) => shared.has(path));
    return result;
  };
}

async function comparing(cache: Cache | undefined) {
  return (await import("./compare-task.ts")).comparer(cache);
}
