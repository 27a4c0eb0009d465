import { readSync } from "node:fs";
import { ceiling } from "../text/decode.ts";

/** How long nobody may have the pipe open for writing, and how long a writer may be silent. */
const longestWait = 2_000;
const longestSilence = 30_000;
const pause = 20;

/** All that comes through a pipe, which is open without waiting. One that nobody writes to is given up. */
export function readPipe(handle: number): Uint8Array | { readonly failure: string } {
  const pieces: Uint8Array[] = [];
  let size = 0;
  let waited = 0;
  while (size <= ceiling) {
    const piece = pieceFrom(handle);
    // Nothing is the end of what was written; before anything was, the writer may still be on its way.
    if (piece?.length === 0 && size > 0) break;
    const most = piece ? longestWait : longestSilence;
    if (waited >= most) return { failure: `nothing came through this pipe for ${most / 1000} s.` };
    if (piece && piece.length > 0) {
      pieces.push(piece);
      size += piece.length;
      waited = 0;
    } else {
      sleep(pause);
      waited += pause;
    }
  }
  return Buffer.concat(pieces);
}

const sleep = (milliseconds: number): unknown =>
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds);

/** What is there now; undefined where a writer has the pipe open and has written nothing yet. */
function pieceFrom(handle: number): Uint8Array | undefined {
  const piece = Buffer.alloc(65_536);
  try {
    return piece.subarray(0, readSync(handle, piece));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EAGAIN") return undefined;
    throw error;
  }
}
