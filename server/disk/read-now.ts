/**
 * The door through which a file comes into a command, which has nothing else to do meanwhile: what is used as strictly
 * as in an editor, and what a person named on the command line as they named it.
 */
import { isUtf8 } from "node:buffer";
import { closeSync, fstatSync, openSync, readSync, realpathSync, type Stats, statSync } from "node:fs";
import { ceiling, decode, type Text } from "../text/decode.ts";
import type { Grounds } from "./grounds.ts";
import { isAll, pieceOf, withoutLinks, withoutWaiting } from "./pieces.ts";
import { readPipe } from "./pipe.ts";
import { reasonOf } from "./reasons.ts";
import { isSchedule, refusedByKind, refusedByLink, refusedByPath } from "./refusals.ts";

type Bytes = Uint8Array | { readonly failure: string };

/** A file that a schedule uses. */
export function readUsed(path: string, grounds: Grounds): Text {
  return refusedByPath(path, grounds) ?? textOf(path, grounds, bytesOf);
}

/**
 * A file that was named. It may have any name and be a pipe; but a name that ends in `.ways` can come from a list of
 * files that a stranger wrote, so no link is followed out of the grounds.
 */
export function readNamed(path: string, grounds: Grounds): NamedText {
  let once = false;
  const text = textOf(path, isSchedule(path) ? grounds : undefined, (handle, stats) => {
    once = !stats.isFile();
    return stats.isFIFO() ? readPipe(handle) : bytesOf(handle, stats);
  });
  return once ? { ...text, once } : text;
}

/** `once`: it cannot be read again, as a pipe cannot. */
export type NamedText = Text & { readonly once?: boolean };

/** A file that is neither shown nor judged, such as one that says what git leaves out. */
export const readBeside = (path: string): Text => textOf(path, undefined, bytesOf);

/** A file that a person named and that is no text, such as a workbook. */
export const readBytes = (path: string): Bytes => open(path, undefined, bytesOf);

/**
 * Looks through many files one after another, each in the same piece of memory, where all that is wanted is told from
 * their bytes. It decides nothing: of whatever is out of the ordinary it gives nothing, and the doors above are asked.
 */
export class Glance {
  #room = Buffer.allocUnsafeSlow(65_536);

  /** The bytes of a plain text until the next look; the path leads through no link but in its folder. */
  at(path: string): Buffer | undefined {
    let handle: number | undefined;
    try {
      handle = openSync(path, withoutLinks);
      const stats = fstatSync(handle);
      if (refusedByKind(stats)) return undefined;
      if (stats.size >= this.#room.length) this.#room = Buffer.allocUnsafeSlow(stats.size + 1);
      const read = readSync(handle, this.#room);
      const bytes = this.#room.subarray(0, read);
      return isAll(stats.size, read, this.#room.length) && isPlainText(bytes) ? bytes : undefined;
    } catch {
      return undefined;
    } finally {
      if (handle !== undefined) closeSync(handle);
    }
  }
}

const isPlainText = (bytes: Buffer): boolean => isUtf8(bytes) && bytes[0] !== 0xef && !bytes.includes(0);

/** What a path leads to; nothing where it leads nowhere: no such file, links in a circle, a folder that is closed to us. */
export function lookAt(path: string): Stats | undefined {
  try {
    return statSync(path);
  } catch {
    return undefined;
  }
}

function textOf(path: string, grounds: Grounds | undefined, read: (handle: number, stats: Stats) => Bytes): Text {
  const bytes = open(path, grounds, read);
  return "failure" in bytes ? bytes : decode(bytes);
}

function open(path: string, grounds: Grounds | undefined, read: (handle: number, stats: Stats) => Bytes): Bytes {
  let handle: number | undefined;
  try {
    const refused = grounds && refusedByLink(realpathSync.native(path), grounds);
    if (refused) return refused;
    handle = openSync(path, withoutWaiting);
    return read(handle, fstatSync(handle));
  } catch (error) {
    return { failure: reasonOf(error) };
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

function bytesOf(handle: number, stats: Stats): Bytes {
  const refused = refusedByKind(stats);
  if (refused) return refused;
  const pieces: Uint8Array[] = [];
  for (let read = 0; read <= ceiling; ) {
    const piece = pieceOf(stats.size, read);
    const count = readSync(handle, piece);
    if (count === 0) break;
    pieces.push(piece.subarray(0, count));
    read += count;
    if (isAll(stats.size, read, piece.length)) break;
  }
  const [only] = pieces;
  return only && pieces.length === 1 ? only : Buffer.concat(pieces);
}
