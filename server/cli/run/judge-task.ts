/** Checks one task in whichever thread it is given to. */
import type { ScheduleResult } from "../../results/result.ts";
import { judgeSchedule, resultOf } from "../../results/schedule.ts";
import type { LoadedFile } from "../../workspace/loaded-file.ts";
import { Project } from "../../workspace/project.ts";
import type { Disk } from "../files.ts";
import type { Cache } from "./cache.ts";
import type { Made, Making, TaskResult } from "./made.ts";
import { contentOf, type KeyedTask, type TaskDetail } from "./plan.ts";

export function judgeTask<M extends Making>(
  task: KeyedTask,
  disk: Disk,
  detail: TaskDetail<M>,
  make: Maker<M>,
  cache: Cache | undefined,
): TaskResult<M> {
  // A file keeps the name it was first met under, though this thread meets its files in another order.
  for (const path of task.files) disk.path(path);
  const [root] = task.files;
  const file = disk.file(root);
  if ("failure" in file) return { failure: `cannot be read: ${file.failure}` };
  // A file that was written meanwhile is not what the plan was made of, nor what is kept under its key.
  const own = cache && contentOf(task.files, disk, detail) === task.content ? cache : undefined;
  const made = make(file, disk, detail.nameOf, {
    found: () => own?.read(task.content, "findings"),
    keep: (findings) => own?.write(task.content, "findings", findings()),
  });
  own?.write(task.content, detail.making, made);
  return made;
}

/** What is found in a schedule is asked by other commands too, whichever of them comes first. */
interface Kept {
  readonly found: () => ScheduleResult | undefined;
  readonly keep: (findings: () => ScheduleResult) => void;
}

type Maker<M extends Making> = (root: LoadedFile, disk: Disk, nameOf: (path: string) => string, kept: Kept) => Made[M];

/** What makes it: only `check` has its own at hand from the start. */
const makers: { readonly [M in Making]: () => Maker<M> | Promise<Maker<M>> } = {
  findings: () => judgeSchedule,
  register: async () => {
    const { registerOfProject, registerOfResult } = await import("../../results/register.ts");
    return (root, disk, nameOf, kept) => {
      const project = new Project(root, disk);
      const found = kept.found();
      const known = found && registerOfResult(project, found);
      if (!found) kept.keep(() => resultOf(project, nameOf));
      return { root: nameOf(root.path), rows: known ?? registerOfProject(project) };
    };
  },
  layout: async () => (await import("../layout.ts")).layoutMaker(false),
  upgrade: async () => (await import("../layout.ts")).layoutMaker(true),
};

export const makerOf = <M extends Making>(making: M): Maker<M> | Promise<Maker<M>> => makers[making]();
