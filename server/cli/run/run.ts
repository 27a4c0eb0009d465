/** Runs a plan: each task is one schedule with all it uses. */
import type { Disk } from "../files.ts";
import { Cache, type CachePlace } from "./cache.ts";
import { judgeTask, makerOf } from "./judge-task.ts";
import type { Made, Making, TaskResult } from "./made.ts";
import { perform, type Threading } from "./perform.ts";
import { contentOf, type KeyedTask, type Plan, type Task, type TaskDetail } from "./plan.ts";

interface RunOptions<M extends Making> extends Threading {
  readonly cwd: string;
  readonly detail: TaskDetail<M>;
  readonly cache: CachePlace | undefined;
}

export interface Ran<M extends Making = "findings"> {
  readonly task: Task;
  readonly result: TaskResult<M>;
  readonly cached: boolean;
}

/** The results of a plan in the order of its tasks, each as soon as it and those before it are there. */
export async function* run<M extends Making>(plan: Plan, disk: Disk, options: RunOptions<M>): AsyncGenerator<Ran<M>> {
  const { cwd, detail } = options;
  const { making } = detail;
  const cache = options.cache && new Cache(options.cache);
  const made = makerOf(making);
  const make = made instanceof Promise ? await made : made;
  const { folders, lent } = disk;
  yield* perform<Task, AheadTask, Made[M]>(
    {
      tasks: plan.tasks,
      ahead: (task) => aheadOf(task, disk, detail, cache),
      kept: ({ content }) => cache?.read(content, making),
      here: (task) => {
        const result = judgeTask(task, disk, detail, make, cache);
        for (const path of task.files) if (!plan.shared.has(path)) disk.release(path);
        return result;
      },
      start: { making, cwd, folders, lent, shared: plan.shared, ...(options.cache ? { cache: options.cache } : {}) },
    },
    options,
  );
}

type AheadTask = KeyedTask & { readonly isKept: boolean };

function aheadOf(task: Task, disk: Disk, detail: TaskDetail, cache: Cache | undefined): AheadTask {
  const content = cache ? contentOf(task.files, disk, detail) : "";
  return { ...task, content, isKept: cache?.has(content, detail.making) ?? false };
}
