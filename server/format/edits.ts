import type { TextEdit } from "../text/lines.ts";

/** The edits that turn one text into another, each a stretch of whole lines, so that a cursor elsewhere stays. */
export function lineEdits(before: string, after: string, offset: number): TextEdit[] {
  const old = lines(before);
  const fresh = lines(after);
  let head = 0;
  while (head < old.length && head < fresh.length && old[head] === fresh[head]) head++;
  let tail = 0;
  const most = Math.min(old.length, fresh.length) - head;
  while (tail < most && old[old.length - 1 - tail] === fresh[fresh.length - 1 - tail]) tail++;
  const start = offset + length(old.slice(0, head));
  const oldMiddle = old.slice(head, old.length - tail);
  const freshMiddle = fresh.slice(head, fresh.length - tail);
  if (oldMiddle.length === freshMiddle.length) return stretches(oldMiddle, freshMiddle, start);
  return [{ start, end: start + length(oldMiddle), text: freshMiddle.join("") }];
}

/** Where as many lines stand as before, only those that differ are replaced. */
function stretches(old: readonly string[], fresh: readonly string[], start: number): TextEdit[] {
  const edits: TextEdit[] = [];
  let at = start;
  let current: { start: number; end: number; text: string } | undefined;
  old.forEach((line, index) => {
    const end = at + line.length;
    if (line === fresh[index]) current = undefined;
    else if (current) {
      current.end = end;
      current.text += fresh[index] ?? "";
    } else {
      current = { start: at, end, text: fresh[index] ?? "" };
      edits.push(current);
    }
    at = end;
  });
  return edits;
}

const lines = (text: string): string[] => text.match(/[^\r\n]*(?:\r\n|\n|\r)|[^\r\n]+$/g) ?? [];
const length = (texts: readonly string[]): number => texts.reduce((sum, text) => sum + text.length, 0);
