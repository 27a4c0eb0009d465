/**
 * The door through which a file comes into an editor's server: its path is compared with the grounds, it is opened
 * without waiting, only a regular file of a bounded size is read in a bounded time, and only UTF-8 is text. A command
 * has the same door in `read-now.ts`; they share what is refused, and in which words.
 */
import { close, fstat, open, read, realpath } from "node:fs";
import { promisify } from "node:util";
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

/** `node:fs/promises` takes longer to load than a schedule to be read. */
const wait = {
  close: promisify(close),
  fstat: promisify(fstat),
  open: promisify(open),
  read: promisify(read),
  realpath: promisify(realpath.native),
};

async function readWhole(path: string, grounds: Grounds): Promise<Text> {
  let handle: number | undefined;
  try {
    const real = await wait.realpath(path);
    const refused = refusedByLink(real, grounds);
    if (refused) return refused;
    handle = await wait.open(real, withoutWaiting);
    const stats = await wait.fstat(handle);
    return refusedByKind(stats) ?? decode(await bytesOf(handle, stats.size));
  } catch (error) {
    return { failure: reasonOf(error) };
  } finally {
    if (handle !== undefined) await wait.close(handle).catch(() => undefined);
  }
}

async function bytesOf(handle: number, size: number): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for (let known = 0; known <= ceiling; ) {
    const piece = pieceOf(size, known);
    const { bytesRead } = await wait.read(handle, piece, 0, piece.length, null);
    if (bytesRead === 0) break;
    pieces.push(piece.subarray(0, bytesRead));
    known += bytesRead;
    if (isAll(size, known, piece.length)) break;
  }
  return Buffer.concat(pieces);
}
