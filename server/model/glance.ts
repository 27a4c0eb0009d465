/**
 * What joining the files of a project asks of the own lines of every board. Where these are plain it is read off their
 * text: binding those of four hundred boards would stand between a large file and its first findings, and hardly one of
 * them is on the screen. Where anything could mean something else than it seems to, they are bound.
 */
import { vocabulary } from "../../grammar/vocabulary.ts";
import type { Segment } from "../syntax/split.ts";
import type { Facts } from "./values.ts";

export interface Glance {
  /** What the board is fed from, as it says itself. */
  readonly from: string | undefined;
  /** Whether it leaves the earth of what feeds it behind, or may do so. */
  readonly ownEarth: boolean;
  /** Whether it has three lines, as far as it says so. */
  readonly three: boolean | undefined;
}

export const glanceAtFacts = (facts: Facts<"board">): Glance => ({
  from: facts.one("fed-from")?.args.from.value,
  ownEarth: facts.has("earthing"),
  three: saidToBeThree(facts),
});

export function saidToBeThree(facts: Facts<"board">): boolean | undefined {
  const own = facts.one("phases")?.args.count.value;
  if (own !== undefined) return own === "three";
  return facts.one("phase") ? false : undefined;
}

/** The same of lines that are plain, all of a board but the first and its ways. */
export function glanceAtLines(segments: readonly Segment[]): Glance | undefined {
  const feeding = segments.flatMap((segment) => (segment.kind === "lines" ? linesOf(segment.text) : [])).filter(isFeed);
  if (feeding.length > 1 || !segments.every(isPlain)) return undefined;
  const [feed] = feeding;
  return { from: feed === undefined ? undefined : feedLine.exec(feed)?.[1], ownEarth: false, three: undefined };
}

function isPlain({ kind, text, fault, mends }: Segment): boolean {
  if (fault !== undefined || mends !== undefined) return false;
  if (kind === "lines") return linesOf(text).every(isPlainLine);
  return (kind === "close" ? closing : testsOfADay).test(text) && !telling.test(text);
}

const linesOf = (text: string): readonly string[] => text.split(/\r\n|\n|\r/);

const isFeed = (line: string): boolean => /^[ \t]*fed-from/.test(line);

/** A name of capital letters that is no standard and no sign of a reading. */
const name = String.raw`(?!BS|EN|IEC|ISO|PD|OL|OR|LIM)[A-Z]{1,3}\d{0,3}`;
const feedLine = new RegExp(String.raw`^[ \t]*fed-from[ \t]+(supply|${name})[ \t]*(?:#.*)?$`);
const firstLine = new RegExp(String.raw`^[ \t]*board[ \t]+(${name})(?:[ \t]+"[^"\\{}\r\n]+")?[ \t]*\{[ \t]*\r?\n?$`);

/** The name of a board by its first line, where that is plain. */
export const nameAtLine = ({ text, fault, mends }: Segment): string | undefined =>
  fault === undefined && mends === undefined ? firstLine.exec(text)?.[1] : undefined;

const closing = /^[ \t]*\}\s*$/;
const testsOfADay = /^[ \t]*(?:dead|live)[ \t][^{}\r\n]*\{[ \t]*\r?\n[^{}]*\n[ \t]*\}\s*$/;

/** Words in which something that is asked could be said, whatever the word of the line. */
const telling = /earth|phase|fed|line|suppl/i;

/** Words of a line that says nothing of what is asked. */
const besides: ReadonlySet<string> = new Set(
  Object.entries(vocabulary.board).flatMap(([word, row]) =>
    "opens" in row || ["fed-from", "earthing", "phases", "phase"].includes(word) ? [] : [word],
  ),
);

function isPlainLine(line: string): boolean {
  if (/^[ \t]*(?:#.*)?$/.test(line)) return true;
  if (isFeed(line)) return feedLine.test(line);
  const [, word = "", rest = ""] = /^[ \t]*([A-Za-z][\w+\-/.]*)(?=[ \t]|$)(.*)$/.exec(line) ?? [];
  return besides.has(word) && !/[{}]/.test(rest) && !telling.test(rest);
}
