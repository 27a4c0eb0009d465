import { resolve, sep } from "node:path";
import { globSync, isDynamicPattern } from "tinyglobby";
import { isSchedule } from "../disk/refusals.ts";
import { Ignored } from "./ignored.ts";

/** Says of a file or folder that a search passes it over. */
export interface Passing {
  leavesOut(path: string, isFolder: boolean): boolean;
  /** Whether there is any rule for what lies in a folder. */
  hasRules(folder: string): boolean;
}

/** The schedules that a pattern matches; nothing where it is no pattern. */
export function matching(pattern: string, cwd: string, passing: Passing | undefined): readonly string[] | undefined {
  if (!isDynamicPattern(pattern)) return undefined;
  const ignored = new Ignored(cwd);
  return globSync(sep === "/" ? pattern : pattern.replaceAll(sep, "/"), {
    cwd,
    absolute: true,
    expandDirectories: false,
    followSymbolicLinks: false,
    ignore: ["**/node_modules/**", "**/.git/**"],
  })
    .filter((file) => isSchedule(file) && !ignored.hasDeep(resolve(file)) && !passing?.leavesOut(resolve(file), false))
    .sort();
}
