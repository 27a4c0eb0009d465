import type { Spot } from "../rules/frame/rule.ts";
import { Positions, textOf } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import { lineStarts } from "../text/lines.ts";
import type { LoadedFile } from "../workspace/loaded-file.ts";
import type { Excerpt, ResultPlace } from "./result.ts";

interface Located {
  readonly file: LoadedFile;
  readonly name: string;
  positions?: Positions;
  lines?: (line: number) => string;
}

/** Tells of any spot in which file and on which line it stands. `nameOf` gives the path as the result is to call it. */
export class Locator {
  readonly #files = new Map<Segment, Located>();

  constructor(files: readonly LoadedFile[], nameOf: (path: string) => string) {
    for (const file of files) {
      const located = { file, name: nameOf(file.path) };
      for (const segment of file.document.segments) this.#files.set(segment, located);
    }
  }

  of({ segment, start, end }: Spot): ResultPlace {
    const located = this.#files.get(segment);
    // No check speaks of another schedule; if one did, what it says must not be lost with its place.
    if (!located) return nowhere;
    located.positions ??= new Positions(located.file.document);
    const { positions, name } = located;
    const from = positions.place(segment, start);
    const to = positions.place(segment, end);
    located.lines ??= linesOf(textOf(located.file.document));
    const line = located.lines(from.line);
    return {
      path: name,
      start: from,
      end: to,
      offset: positions.offset(segment, start),
      endOffset: positions.offset(segment, end),
      line: excerptOf(line, from.character, to.line === from.line ? to.character : line.length),
    };
  }

  /** How far into its file a segment begins. */
  offsetOf(segment: Segment): number {
    return this.of({ segment, start: 0, end: 0 }).offset;
  }
}

const start = { line: 0, character: 0 };
const nowhere: ResultPlace = {
  path: "",
  start,
  end: start,
  offset: 0,
  endOffset: 0,
  line: { text: "", from: 0, to: 0 },
};

/** Each line of a text without its end. */
function linesOf(text: string): (line: number) => string {
  const starts = lineStarts(text);
  return (index) => withoutBreak(text.slice(starts[index], starts[index + 1]));
}

const withoutBreak = (line: string): string =>
  line.slice(0, line.length - (/\r?\n$|\r$/.exec(line.slice(-2))?.[0].length ?? 0));

const endless = 2000;

/** A line without end, as rubbish has it, is neither kept nor measured whole. */
export function excerptOf(line: string, from: number, to: number): Excerpt {
  if (from > endless) {
    const skipped = from - endless / 2;
    return excerptOf(`…${line.slice(skipped, skipped + endless)}`, from - skipped + 1, to - skipped + 1);
  }
  const text = line.slice(0, 2 * endless);
  return { text, from, to: Math.min(to, text.length) };
}
