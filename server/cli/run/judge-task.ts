/** Checks one task in whichever thread it is given to. */
import type { ScheduleResult } from "../../results/result.ts";
import { judgeSchedule } from "../../results/schedule.ts";
import type { Disk } from "../files.ts";
import type { Cache } from "./cache.ts";
import { contentOf, type Task } from "./plan.ts";

export type TaskResult = ScheduleResult | { readonly failure: string };

/** `nameOf`: the path of a file as results call it. */
export function judgeTask(
  task: Task,
  disk: Disk,
  nameOf: (path: string) => string,
  cache: Cache | undefined,
): TaskResult {
  // A file keeps the name it was first met under, though this thread meets its files in another order.
  for (const path of task.files) disk.path(path);
  const [root] = task.files;
  const file = disk.file(root);
  if ("failure" in file) return { failure: `cannot be read: ${file.failure}` };
  const result = judgeSchedule(file, disk, nameOf);
  // A file that was written meanwhile is not what the plan was made of.
  if (cache && contentOf(task.files, disk, nameOf) === task.content) cache.write(task.content, result);
  return result;
}
