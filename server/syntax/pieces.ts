import { holding } from "../text/lines.ts";
import type { Cuttable } from "./lines.ts";

/** A text in pieces that are not put together: of a large file, little is cut out after an edit. */
export class Pieces implements Cuttable {
  readonly #pieces: readonly string[];
  /** Where each begins. */
  readonly #starts: Int32Array;
  readonly length: number;

  constructor(pieces: readonly string[]) {
    this.#pieces = pieces;
    this.#starts = new Int32Array(pieces.length);
    let length = 0;
    for (let index = 0; index < pieces.length; index++) {
      this.#starts[index] = length;
      length += (pieces[index] as string).length;
    }
    this.length = length;
  }

  slice(start: number, end: number): string {
    let cut = "";
    for (let index = holding(this.#starts, this.#pieces.length, start); index < this.#pieces.length; index++) {
      const first = this.#starts[index] as number;
      if (first >= end) break;
      cut += (this.#pieces[index] as string).slice(Math.max(start - first, 0), end - first);
    }
    return cut;
  }
}
