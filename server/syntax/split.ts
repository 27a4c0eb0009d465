import { divide } from "./divide.ts";
import { type Cuttable, type Lines, linesOf } from "./lines.ts";
import { divideByIndent } from "./recover.ts";
import { type Draft, finish, type Segment } from "./segment.ts";

export type { Segment } from "./segment.ts";

/** Divides a file by its lines. */
export const split = (text: string): Segment[] => draftsOf(text, linesOf(text)).map((draft) => finish(text, draft));

/**
 * Where a file's braces add up, they say it all. Where they do not, the whole file is weighed: its indentation shows
 * which brace was lost or is too many, if it is laid out well enough to trust and if reading it so takes few changes;
 * else a line that starts with a word that can only begin a new part ends whatever is open.
 */
export function draftsOf(text: Cuttable, lines: Lines, opened = 0): readonly Draft[] {
  const plain = divide(lines);
  const faults = plain.filter(({ fault }) => fault).length;
  if (faults === 0) return plain;
  const byIndent = divideByIndent(text, lines, faults + 1);
  if (byIndent && "notWhole" in byIndent) {
    const row = opened < mostOpened ? byIndent.notWhole : undefined;
    const [from, until] = row === undefined ? [0, lines.count] : [row, row + 1];
    const own = linesOf(text.slice(lines.start(from), lines.start(until)));
    return draftsOf(text, lines.with(from, until, own), opened + 1);
  }
  return byIndent ?? plain;
}

/** So many blocks are weighed by their lines, one after another, before all are. */
const mostOpened = 3;

/** Whether a file's braces say all of its division, each on the line of its word. */
export const isByBraces = (lines: Lines): boolean => !lines.hasLowBraces && divide(lines).every(({ fault }) => !fault);

/** The one segment that a text is by its braces, if it is one. */
export function oneByBraces(text: string): Segment | undefined {
  const lines = linesOf(text);
  // What a brace on a line of its own belongs to may stand in the segment above.
  if (lines.hasLowBraces) return undefined;
  const [only, ...others] = divide(lines);
  return only && others.length === 0 && !only.fault ? finish(text, only) : undefined;
}
