/**
 * The door through which a file comes into an editor's server: its path is compared with the grounds, it is opened
 * without waiting, only a regular file of a bounded size is read in a bounded time, and only UTF-8 is text. A command
 * has the same door in `read-now.ts`; they share what is refused, and in which words.
 */
import { type FileHandle, open, realpath } from "node:fs/promises";
import { ceiling, decode, type Text } from "../text/decode.ts";
import type { Grounds } from "./grounds.ts";
import { isAll, pieceOf, withoutWaiting } from "./pieces.ts";
import { reasonOf } from "./reasons.ts";
import { refusedByKind, refusedByLink, refusedByPath } from "./refusals.ts";
import { within } from "./within.ts";

/** A network drive that is gone can keep a file for minutes. */
const longestRead = 10_000;

export async function readSchedule(path: string, grounds: Grounds): Promise<Text> {
  const refused = refusedByPath(path, grounds);
  if (refused) return refused;
  const late = { failure: `reading it took longer than ${longestRead / 1000} s.` };
  return await within(longestRead, readWhole(path, grounds), late);
}

async function readWhole(path: string, grounds: Grounds): Promise<Text> {
  let handle: FileHandle | undefined;
  try {
    const real = await realpath(path);
    const refused = refusedByLink(real, grounds);
    if (refused) return refused;
    handle = await open(real, withoutWaiting);
    const stats = await handle.stat();
    return refusedByKind(stats) ?? decode(await bytesOf(handle, stats.size));
  } catch (error) {
    return { failure: reasonOf(error) };
  } finally {
    await handle?.close().catch(() => undefined);
  }
}

async function bytesOf(handle: FileHandle, size: number): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for (let read = 0; read <= ceiling; ) {
    const { bytesRead, buffer } = await handle.read(pieceOf(size, read));
    if (bytesRead === 0) break;
    pieces.push(buffer.subarray(0, bytesRead));
    read += bytesRead;
    if (isAll(size, read, buffer.length)) break;
  }
  return Buffer.concat(pieces);
}
