import { accessSync, chmodSync, constants, realpathSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { reasonOf } from "../disk/reasons.ts";

/** Writes a file that may be there already. Returns why it could not be done, if it could not. */
export function writeFile(path: string, content: string | Uint8Array): string | undefined {
  try {
    writeFileSync(path, content);
    return undefined;
  } catch (error) {
    return reasonOf(error);
  }
}

/**
 * Replaces a file in one step: the new text is written beside it and then takes its place, so that a full disk or an
 * interruption leaves the old one whole. Returns why it could not be done, if it could not.
 */
export function replaceFile(path: string, text: string): string | undefined {
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
