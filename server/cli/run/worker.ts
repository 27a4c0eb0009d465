/** A thread that checks what it is sent. */
import type { MessagePort } from "node:worker_threads";
import { Disk } from "../files.ts";
import { namesFrom } from "../names.ts";
import { Cache, type CachePlace } from "./cache.ts";
import { judgeTask, makerOf } from "./judge-task.ts";
import type { Making, TaskResult } from "./made.ts";
import type { KeyedTask } from "./plan.ts";

/** What a thread is told once. */
export interface WorkerStart {
  readonly cwd: string;
  readonly folders: readonly string[];
  readonly lent: ReadonlyMap<string, string>;
  /** Files of several tasks, which are worth keeping from one to the next. */
  readonly shared: ReadonlySet<string>;
  readonly cache?: CachePlace;
  readonly making: Making;
}

export interface WorkerAnswer<M extends Making> {
  readonly id: number;
  readonly results: readonly TaskResult<M>[];
}

export async function work(port: MessagePort, start: WorkerStart): Promise<void> {
  const disk = new Disk(start.cwd, start.folders);
  for (const [path, text] of start.lent) disk.lend(path, text);
  const cache = start.cache && new Cache(start.cache);
  const detail = { nameOf: namesFrom(start.cwd).nameOf, making: start.making };
  const make = await makerOf(start.making);
  // What comes before somebody listens waits.
  port.on("message", ({ id, tasks }: { id: number; tasks: readonly KeyedTask[] }) => {
    const results = tasks.map((task) => {
      const result = judgeTask(task, disk, detail, make, cache);
      disk.forget((path) => start.shared.has(path));
      return result;
    });
    port.postMessage({ id, results } satisfies WorkerAnswer<Making>);
  });
}
