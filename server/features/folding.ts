import { parse, type Statement } from "../../grammar/parser.ts";
import { Memo } from "../memo/memo.ts";
import type { Segment } from "../syntax/split.ts";
import { lineStarts, positionOf } from "../text/lines.ts";
import type { Snapshot } from "../workspace/workspace.ts";

/** Lines of the file that fold into their first. */
interface Fold {
  readonly first: number;
  readonly last: number;
  readonly isComment: boolean;
}

export function folds(snapshot: Snapshot): Fold[] {
  const found: Fold[] = [];
  const open: number[] = [];
  let line = 0;
  for (const segment of snapshot.file.document.segments) {
    if (segment.ends) open.length = Math.max(0, open.length - segment.ends);
    if (segment.kind === "open") open.push(line);
    const opened = segment.kind === "close" && segment.fault !== "extra-close" ? open.pop() : undefined;
    if (opened !== undefined && line - 1 > opened) found.push({ first: opened, last: line - 1, isComment: false });
    for (const { first, last, isComment } of foldsIn(segment)) {
      found.push({ first: first + line, last: last + line, isComment });
    }
    line += segment.breaks;
  }
  return found.sort((a, b) => a.first - b.first);
}

const kept = new Memo<Segment, readonly Fold[]>();

/** Folds of one segment, its lines counted from its own first. */
function foldsIn(segment: Segment): readonly Fold[] {
  const before = kept.get(segment);
  if (before) return before;
  const found = [...blocksIn(segment), ...commentsIn(segment.text)];
  kept.set(segment, found);
  return found;
}

function blocksIn({ kind, text, mends }: Segment): Fold[] {
  if (kind !== "block") return [];
  const starts = lineStarts(text);
  const found: Fold[] = [];
  const visit = ({ word, block }: Statement): void => {
    if (!block) return;
    const first = positionOf(starts, word.startOffset).line;
    // The closing brace stays in sight.
    const last = block.close && positionOf(starts, block.close.startOffset).line - 1;
    if (last !== undefined && last > first) found.push({ first, last, isComment: false });
    for (const statement of block.statements) visit(statement);
  };
  for (const statement of parse(text, mends).statements) visit(statement);
  return found;
}

/** Two lines of comment or more, one below the other. */
function commentsIn(text: string): Fold[] {
  if (!text.includes("#")) return [];
  const found: Fold[] = [];
  const lines = text.split(/\r\n|\n|\r/);
  let first: number | undefined;
  for (let at = 0; at <= lines.length; at++) {
    const isComment = /^[ \t]*#/.test(lines[at] ?? "");
    if (isComment) first ??= at;
    else {
      if (first !== undefined && at - 1 > first) found.push({ first, last: at - 1, isComment: true });
      first = undefined;
    }
  }
  return found;
}
