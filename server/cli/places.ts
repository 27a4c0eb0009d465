import type { Spot } from "../rules/frame/rule.ts";
import { Positions, textOf } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import { lineStarts, type Position } from "../text/lines.ts";
import type { LoadedFile } from "../workspace/project.ts";

/** A spot in its file. */
export interface FindingLocation {
  readonly file: LoadedFile;
  readonly start: Position;
  readonly end: Position;
  readonly offset: number;
  readonly endOffset: number;
}

/** Tells of any spot in which file and on which line it stands. */
export class Locator {
  readonly #files = new Map<Segment, LoadedFile>();
  readonly #positions = new Map<LoadedFile, Positions>();
  readonly #lines = new Map<LoadedFile, (line: number) => string>();

  constructor(files: readonly LoadedFile[]) {
    for (const file of files) {
      this.#positions.set(file, new Positions(file.document));
      for (const segment of file.document.segments) this.#files.set(segment, file);
    }
  }

  of({ segment, start, end }: Spot): FindingLocation {
    const file = this.#files.get(segment);
    const positions = file && this.#positions.get(file);
    if (!file || !positions) throw new Error("A finding stands in no file that was checked.");
    return {
      file,
      start: positions.place(segment, start),
      end: positions.place(segment, end),
      offset: positions.offset(segment, start),
      endOffset: positions.offset(segment, end),
    };
  }

  /** The text of a line without its end. */
  line(file: LoadedFile, line: number): string {
    const before = this.#lines.get(file);
    if (before) return before(line);
    const text = textOf(file.document);
    const starts = lineStarts(text);
    const lineAt = (index: number) => withoutBreak(text.slice(starts[index], starts[index + 1]));
    this.#lines.set(file, lineAt);
    return lineAt(line);
  }
}

const withoutBreak = (line: string): string =>
  line.slice(0, line.length - (/\r?\n$|\r$/.exec(line.slice(-2))?.[0].length ?? 0));
