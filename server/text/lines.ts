/** Zero-based line and UTF-16 column, as editors count. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

/** Offsets at which the lines of a text begin. */
export function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) starts.push(at + 1);
  }
  return starts;
}

export function positionOf(starts: readonly number[], offset: number): Position {
  const line = holding(starts, starts.length, offset);
  return { line, character: offset - (starts[line] ?? 0) };
}

/** Of so many stretches one behind another, by where each begins, the one that an offset is in. */
export function holding(starts: ArrayLike<number>, count: number, offset: number): number {
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The offset of a place; one beyond the line's end gives the line's end, before the signs that end it. */
export function offsetOf(starts: readonly number[], text: string, place: Position): number {
  const start = starts[place.line];
  if (start === undefined) return text.length;
  const next = starts[place.line + 1];
  if (next === undefined) return Math.min(start + place.character, text.length);
  const end = text.startsWith("\r\n", next - 2) ? next - 2 : next - 1;
  return Math.min(start + place.character, end);
}

/** Replaces a part of a text. */
export interface TextEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Applies edits that do not overlap, in any order. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const sorted = [...edits].sort((a, b) => a.start - b.start || a.end - b.end);
  let result = "";
  let at = 0;
  for (const edit of sorted) {
    result += text.slice(at, edit.start) + edit.text;
    at = edit.end;
  }
  return result + text.slice(at);
}
