/** Checks one task in whichever thread it is given to. */
import type { ScheduleResult } from "../../results/result.ts";
import { judgeSchedule } from "../../results/schedule.ts";
import type { Disk } from "../files.ts";
import type { Cache } from "./cache.ts";
import { contentOf, type KeyedTask, type TaskDetail } from "./plan.ts";

export type TaskResult = ScheduleResult | { readonly failure: string };

export function judgeTask(task: KeyedTask, disk: Disk, detail: TaskDetail, cache: Cache | undefined): TaskResult {
  // A file keeps the name it was first met under, though this thread meets its files in another order.
  for (const path of task.files) disk.path(path);
  const [root] = task.files;
  const file = disk.file(root);
  if ("failure" in file) return { failure: `cannot be read: ${file.failure}` };
  const result = judgeSchedule(file, disk, detail);
  // A file that was written meanwhile is not what the plan was made of.
  if (cache && contentOf(task.files, disk, detail) === task.content) cache.write(task.content, result);
  return result;
}
