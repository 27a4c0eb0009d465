/**
 * Where what was merged is laid out: lines of two sides can each be right and not fit together. Ways that came whole from
 * one side are left out of the work by a line that stands for them.
 */
import { format } from "../format/format.ts";
import { type Segment, split } from "../syntax/split.ts";

/** The result in the one style, where both sides are in it; nothing where they are not, or where it is so already. */
export function neatened(result: string, ours: string, theirs: string): string | undefined {
  const [here, there, merged] = [split(ours), split(theirs), split(result)];
  const known = new Set([...here, ...there].filter(isWay).map(({ text }) => text));
  const elsewhere = waysOf(there);
  const both = new Set([...waysOf(here)].filter((way) => elsewhere.has(way)));
  if (format(shortened(here, both)) || format(shortened(there, both))) return undefined;
  const short = format(shortened(merged, known))?.text;
  return short === undefined ? undefined : restored(merged, known, split(short));
}

const isWay = ({ kind, word }: Segment): boolean => kind === "block" && word === "way";
const waysOf = (segments: readonly Segment[]): Set<string> => new Set(segments.filter(isWay).map(({ text }) => text));
const isLeftOut = (segment: Segment, known: ReadonlySet<string>): boolean => isWay(segment) && known.has(segment.text);

const shortened = (segments: readonly Segment[], known: ReadonlySet<string>): string =>
  segments.map((segment) => (isLeftOut(segment, known) ? standIn(segment) : segment.text)).join("");

/** A way of one line, indented as the one it stands for. */
const standIn = ({ text }: Segment): string =>
  `${/^[^\S\r\n]*/.exec(text)?.[0] ?? ""}way 1 spare${/[\r\n]+$/.exec(text)?.[0] ?? ""}`;

function restored(
  merged: readonly Segment[],
  known: ReadonlySet<string>,
  short: readonly Segment[],
): string | undefined {
  const wanted = merged.filter(({ text }) => text !== "");
  const found = short.filter(({ text }) => text !== "");
  if (
    wanted.length !== found.length ||
    wanted.some(({ kind, word }, at) => found[at]?.kind !== kind || found[at]?.word !== word)
  )
    return undefined;
  return wanted.map((segment, at) => (isLeftOut(segment, known) ? segment.text : (found[at]?.text ?? ""))).join("");
}
