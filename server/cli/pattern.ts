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

/** The schedules that a pattern matches, or why it is not looked for; nothing where it is no pattern. */
export function matching(
  pattern: string,
  cwd: string,
  passing: Passing | undefined,
): readonly string[] | { readonly failure: string } | undefined {
  if (!isDynamicPattern(pattern)) return undefined;
  const failure = tooWide(pattern);
  if (failure !== undefined) return { failure };
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

/**
 * A name that matches all but the end of a pattern is tried in as many ways as its stars can share it out, so that each
 * star more takes as many times longer as the name has signs: with seven it is minutes.
 */
const mostStars = 3;
const mostLevels = 4;

/** Why a pattern is not looked for, as the end of a sentence. */
function tooWide(pattern: string): string | undefined {
  const parts = pattern.split(/[\\/]/);
  if (/[+*]\(/.test(pattern)) return "a group that may be repeated is no part of a pattern here.";
  if (parts.filter((part) => part.includes("**")).length > mostLevels)
    return `it has ** more than ${mostLevels} times.`;
  const isWide = parts.some((part) => (part.match(/\*+|!\(/g) ?? []).length > mostStars);
  return isWide ? `a part of it has more than ${mostStars} stars.` : undefined;
}
