import {
  accessSync,
  chmodSync,
  closeSync,
  constants,
  openSync,
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
 * what stood in it, without its byte order mark, and what is to stand there.
 */
export function replaceUnchanged(path: string, disk: Texts, before: string, after: string): string | undefined {
  if (lookAt(path)?.isFile() === false) return "it is no file.";
  const now = disk.text(path);
  if ("failure" in now) return now.failure;
  if (now.text !== before) return changedMeanwhile;
  return replaceFile(path, (now.bom ? "\ufeff" : "") + after);
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
  let beside: string | undefined;
  try {
    // A link stays a link: what it leads to is replaced.
    const real = realpathSync.native(path);
    // Renaming would get past a file that is protected against writing.
    accessSync(real, constants.W_OK);
    beside = join(dirname(real), `.wayfile-${process.pid}.tmp`);
    writeFileSync(beside, text, { flag: "wx" });
    chmodSync(beside, statSync(real).mode);
    renameSync(beside, real);
    return undefined;
  } catch (error) {
    if (beside !== undefined) rmSync(beside, { force: true });
    return reasonOf(error);
  }
}
