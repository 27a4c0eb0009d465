import { hash } from "node:crypto";
import { readFileSync } from "node:fs";
import { isAbsolute } from "node:path";
import { folderOfCaches } from "./cache-folder.ts";
import type { CachePlace } from "./run/cache.ts";

/**
 * Where results are kept, and what distinguishes this program from any other version of it. One that runs from its sources keeps
 * nothing: they may change while its version does not.
 */
export function placeOfCache(program: string, env: NodeJS.ProcessEnv): CachePlace | undefined {
  if (program.endsWith(".ts")) return undefined;
  const folder = folderOfCaches(env);
  if (!isAbsolute(folder)) return undefined;
  return { folder, program: hash("sha256", readFileSync(program), "hex").slice(0, 16) };
}
