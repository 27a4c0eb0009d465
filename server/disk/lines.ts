/**
 * The lines of a file of this program's own making, of any size: no more of it is held than a line and a piece. What
 * cannot be read throws.
 */
import { closeSync, openSync, readFileSync, readSync } from "node:fs";
import { lookAt } from "./read-now.ts";

const pieceSize = 262_144;
const lineEnd = 10;

/** Lines that can be gone through again and again; what is no regular file, such as a pipe, is read once and held. */
export function linesIn(path: string): () => Iterable<string> {
  if (lookAt(path)?.isFile()) return () => piecewise(path);
  const lines = readFileSync(path, "utf8").split("\n");
  return () => lines;
}

function* piecewise(path: string): Generator<string> {
  const handle = openSync(path, "r");
  try {
    const piece = Buffer.allocUnsafe(pieceSize);
    let begun: Buffer[] = [];
    for (let read = readSync(handle, piece); read > 0; read = readSync(handle, piece)) {
      let from = 0;
      for (let end = piece.indexOf(lineEnd); end >= 0 && end < read; end = piece.indexOf(lineEnd, from)) {
        const rest = piece.subarray(from, end);
        yield begun.length === 0 ? rest.toString("utf8") : Buffer.concat([...begun, rest]).toString("utf8");
        begun = [];
        from = end + 1;
      }
      if (from < read) begun.push(Buffer.from(piece.subarray(from, read)));
    }
    if (begun.length > 0) yield Buffer.concat(begun).toString("utf8");
  } finally {
    closeSync(handle);
  }
}
