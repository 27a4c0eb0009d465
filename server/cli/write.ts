import {
  accessSync,
  chmodSync,
  closeSync,
  constants,
  lstatSync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { lookAt } from "../disk/read-now.ts";
import { reasonOf } from "../disk/reasons.ts";
import { isSchedule } from "../disk/refusals.ts";
import type { Text } from "../text/decode.ts";

/** Writes a file that may be there already. Returns why it could not be done, if it could not. */
export function writeFile(path: string, content: string | Uint8Array): string | undefined {
  const refused = refusedTarget(path);
  if (refused !== undefined) return refused;
  if (lookAt(path)?.isFile()) return replaceFile(path, content);
  if (isFree(path)) return putBeside(path, content, undefined);
  let handle: number | undefined;
  try {
    handle = openToWrite(path);
    writeFileSync(handle, content);
    return undefined;
  } catch (error) {
    return reasonOf(error);
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

/** Whether nothing is there, not even a link that leads nowhere. */
function isFree(path: string): boolean {
  try {
    return lstatSync(path, { throwIfNoEntry: false }) === undefined;
  } catch {
    return false;
  }
}

/** Opens what is no file, or not yet. A pipe would wait for ever for somebody to read it, so it is asked first. */
export function openToWrite(path: string): number {
  if (!lookAt(path)?.isFIFO()) return openSync(path, "w");
  const first = openSync(path, constants.O_WRONLY | constants.O_NONBLOCK);
  try {
    return openSync(path, "w");
  } finally {
    closeSync(first);
  }
}

/** Why a report is not written to a path, as the end of a sentence: a schedule would be lost, perhaps the very one it is of. */
export function refusedTarget(path: string): string | undefined {
  if (isSchedule(path)) return "its name ends in “.ways”, as only a schedule's does. Choose another.";
  try {
    const isLink = lookAt(path)?.isFile() && isSchedule(realpathSync.native(path));
    return isLink ? "it is a link to a schedule, which would be lost. Choose another name." : undefined;
  } catch (error) {
    return reasonOf(error);
  }
}

/**
 * The same for a file that was looked at a while ago: what somebody wrote meanwhile is not lost. `before` and `after`:
 * what stood in it, without its byte order mark, and what is to stand there. Whoever replaces many clears what is stale
 * beside them once, by `clearStale`.
 */
export function replaceUnchanged(path: string, disk: Texts, before: string, after: string): string | undefined {
  if (lookAt(path)?.isFile() === false) return "it is no file.";
  const now = disk.text(path);
  if ("failure" in now) return now.failure;
  if (now.text !== before) return changedMeanwhile;
  return replaceOneOfMany(path, (now.bom ? "\ufeff" : "") + after);
}

export const changedMeanwhile = "it was changed meanwhile. Run this again.";

/** Gives files as they are now. */
interface Texts {
  text(path: string): Text;
}

/**
 * Replaces a file in one step: the new text is written beside it and then takes its place, so that a full disk or an
 * interruption leaves the old one whole. Returns why it could not be done, if it could not.
 */
export function replaceFile(path: string, text: string | Uint8Array): string | undefined {
  clearStale([path]);
  return replaceOneOfMany(path, text);
}

function replaceOneOfMany(path: string, text: string | Uint8Array): string | undefined {
  try {
    // A link stays a link: what it leads to is replaced.
    const real = realpathSync.native(path);
    // Renaming would get past a file that is protected against writing.
    accessSync(real, constants.W_OK);
    return putBeside(real, text, statSync(real).mode);
  } catch (error) {
    return reasonOf(error);
  }
}

/** How old a file beside another must be before it is taken for left over, ms: writing it takes far less. */
const staleAfter = 60_000;

/**
 * Removes what a run that was killed in the middle of writing left beside these files: only what bears the name of a
 * process that is gone, and was not touched for a while, since a shared folder is written to from other machines.
 */
export function clearStale(paths: Iterable<string>): void {
  for (const folder of new Set(Array.from(paths, (path) => dirname(path)))) {
    try {
      for (const name of readdirSync(folder)) {
        const pid = besideName.exec(name)?.[1];
        if (pid === undefined || isRunning(Number(pid))) continue;
        const left = lstatSync(join(folder, name));
        if (left.isFile() && Date.now() - left.mtimeMs > staleAfter) rmSync(join(folder, name), { force: true });
      }
    } catch {
      // What cannot be cleared harms nobody; what was asked for says itself why it cannot be done.
    }
  }
}

const besideName = /^\.wayfile-([1-9]\d*)\.tmp$/;

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // One of another person's may not be signalled, but is there.
    return !(error instanceof Error && "code" in error && error.code === "ESRCH");
  }
}

/** Writes beside a path first, so that it never leads to a part of the text. `mode`: that of a file that was there. */
function putBeside(path: string, text: string | Uint8Array, mode: number | undefined): string | undefined {
  const beside = join(dirname(path), `.wayfile-${process.pid}.tmp`);
  try {
    writeFileSync(beside, text, { flag: "wx" });
    if (mode !== undefined) chmodSync(beside, mode);
    renameSync(beside, path);
    return undefined;
  } catch (error) {
    rmSync(beside, { force: true });
    return reasonOf(error);
  }
}
