import { hash } from "node:crypto";
import { readFileSync } from "node:fs";
import { homedir, platform } from "node:os";
import { isAbsolute, join } from "node:path";
import type { CachePlace } from "./run/cache.ts";

/**
 * The folder for caches of the person who runs the program: `WAYFILE_CACHE` if it is set, else where the system keeps
 * such things. A program that runs from its sources keeps nothing: they may change while its version does not.
 */
export function placeOfCache(program: string, env: NodeJS.ProcessEnv): CachePlace | undefined {
  if (program.endsWith(".ts")) return undefined;
  const folder = folderOfCaches(env);
  if (!isAbsolute(folder)) return undefined;
  return { folder, program: hash("sha256", readFileSync(program), "hex").slice(0, 16) };
}

export const folderOfCaches = (env: NodeJS.ProcessEnv): string =>
  env.WAYFILE_CACHE || join(systemFolder(env), "wayfile");

function systemFolder(env: NodeJS.ProcessEnv): string {
  if (env.XDG_CACHE_HOME) return env.XDG_CACHE_HOME;
  if (platform() === "win32" && env.LOCALAPPDATA) return env.LOCALAPPDATA;
  return platform() === "darwin" ? join(homedir(), "Library", "Caches") : join(homedir(), ".cache");
}
