/** The text of a merge, its conflicts between marks as git writes them. */
import type { Conflict, Merged, Piece } from "./merge.ts";

export const styles = ["merge", "diff3", "zdiff3"] as const;
export type Style = (typeof styles)[number];

export interface Marks {
  /** How many signs a mark has. */
  readonly size: number;
  readonly style: Style;
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

export function textOf({ pieces, lineEnd, closed, bom }: Merged, marks: Marks): string {
  const text = pieces.map((piece) => (typeof piece === "string" ? piece : marked(piece, marks, lineEnd))).join("");
  const isOpen = !closed && typeof lastOf(pieces) === "string" && text.endsWith(lineEnd);
  return (bom ? "\ufeff" : "") + (isOpen ? text.slice(0, -lineEnd.length) : text);
}

const lastOf = (pieces: readonly Piece[]): Piece | undefined => pieces.findLast((piece) => piece !== "");

function marked(conflict: Conflict, { size, style, base, ours, theirs }: Marks, end: string): string {
  const { head, tail, middle } = style === "zdiff3" ? trimmed(conflict) : { head: "", tail: "", middle: conflict };
  const mark = (sign: string, label = ""): string => `${sign.repeat(size)}${label === "" ? "" : ` ${label}`}${end}`;
  const before = style === "merge" ? "" : mark("|", base) + middle.base;
  return `${head}${mark("<", ours)}${middle.ours}${before}${mark("=")}${middle.theirs}${mark(">", theirs)}${tail}`;
}

/** Lines that both sides begin or end with, taken out of the marks. */
function trimmed(conflict: Conflict): { readonly head: string; readonly tail: string; readonly middle: Conflict } {
  const [ours, theirs] = [linesOf(conflict.ours), linesOf(conflict.theirs)];
  const most = Math.min(ours.length, theirs.length);
  let head = 0;
  while (head < most && ours[head] === theirs[head]) head++;
  let tail = 0;
  while (tail < most - head && ours.at(-1 - tail) === theirs.at(-1 - tail)) tail++;
  const inner = (lines: readonly string[]) => lines.slice(head, lines.length - tail).join("");
  return {
    head: ours.slice(0, head).join(""),
    tail: tail === 0 ? "" : ours.slice(-tail).join(""),
    middle: { ...conflict, ours: inner(ours), theirs: inner(theirs) },
  };
}

const linesOf = (text: string): string[] => text.match(/[^\r\n]*(?:\r\n|\n|\r)/g) ?? [];
