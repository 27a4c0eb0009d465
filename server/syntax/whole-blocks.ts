/**
 * Blocks that are divided the same whatever stands round them. After a brace that is lost they are most of a large file,
 * and each is weighed as one row.
 */
import { containers, opening, structural } from "../../grammar/vocabulary.ts";
import type { Lines } from "./lines.ts";
import type { Segment } from "./segment.ts";

/** The lines of some segments, with one row for each block that is whole. */
export const withWholeBlocks = (lines: Lines, segments: readonly Segment[]): Lines =>
  lines.taken(segments.map(lineCount), openingsOfWhole);

/** A segment is whole lines; the last of a file may have no end. */
export const lineCount = ({ breaks, text }: Segment): number => breaks + (/[\r\n]$/.test(text) ? 0 : 1);

/**
 * How many lines open a block that has something in it, where braces and indentation say the same of all of them: then
 * neither reading has anything to decide. Nothing where that is not so.
 */
function openingsOfWhole(lines: Lines, from: number, until: number): number | undefined {
  const word = lines.word(from);
  if (lines.net(from) !== 1 || !lines.isSolid(from) || !opening.has(word) || containers.has(word)) return undefined;
  const indents: number[] = [];
  let openings = 0;
  for (let line = from; line < until; line++) if (lines.opensFirst(line)) return undefined;
  for (let line = from; line < until; line = solidAfter(lines, line, until)) {
    const next = solidAfter(lines, line, until);
    const isDeeper = next < until && lines.indent(next) > lines.indent(line);
    const isInside =
      line === from || (lines.indent(line) > (indents.at(-1) ?? -1) && !structural.has(lines.word(line)));
    if (lines.closesFirst(line)) {
      if (lines.net(line) !== -1 || lines.indent(line) !== indents.pop() || isDeeper) return undefined;
      if (indents.length === 0) return line === until - 1 ? openings : undefined;
    } else if (!isInside) return undefined;
    else if (lines.net(line) === 1) {
      indents.push(lines.indent(line));
      const isEmpty = next < until && lines.closesFirst(next);
      if (!isDeeper && !isEmpty) return undefined;
      if (!isEmpty) openings++;
    } else if (lines.net(line) !== 0 || isDeeper) return undefined;
  }
  return undefined;
}

function solidAfter(lines: Lines, line: number, until: number): number {
  let next = line + 1;
  while (next < until && !lines.isSolid(next)) next++;
  return next;
}
