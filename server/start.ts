/**
 * What is loaded before the program itself: Node keeps what it compiled of it from one start to the next, in a folder
 * that is the person's own. One that others can write to would be a way in.
 */
import module from "node:module";
import { isAbsolute, join } from "node:path";
import { folderOfCaches } from "./cli/cache-place.ts";

/** ms after which a program that still runs keeps what is compiled: by then it has done most of what it does. */
const settled = 5_000;

/** `program` is a file by its place from this one. */
export async function startWithCompiled(program: string): Promise<void> {
  const folder = folderOfCaches(process.env);
  // Before Node 22.10 there is none of this, and the program starts as it does.
  if (isAbsolute(folder)) module.enableCompileCache?.(join(folder, "compiled"));
  await import(new URL(program, import.meta.url).href);
  setTimeout(() => module.flushCompileCache?.(), settled).unref();
}
