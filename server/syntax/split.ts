import { divide } from "./divide.ts";
import { linesOf } from "./read-lines.ts";
import { divideByIndent } from "./recover.ts";
import type { Segment } from "./segment.ts";

export type { Segment } from "./segment.ts";

/**
 * Divides a file by its lines. Where its braces add up, they say it all. Where they do not, the whole file is weighed:
 * its indentation shows which brace was lost or is too many, if it is laid out well enough to trust and if reading it so
 * takes few changes; else a line that starts with a word that can only begin a new part ends whatever is open.
 */
export function split(text: string): Segment[] {
  const lines = linesOf(text);
  const plain = divide(text, lines);
  const faults = plain.filter(({ fault }) => fault).length;
  return faults === 0 ? plain : (divideByIndent(text, lines, faults + 1) ?? plain);
}

/** The division by braces, where they say it all. */
export function splitByBraces(text: string): Segment[] | undefined {
  const plain = divide(text, linesOf(text));
  return plain.some(({ fault }) => fault) ? undefined : plain;
}
