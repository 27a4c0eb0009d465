/** The parts of a file by their first lines alone: what belongs to which block is known before any of it is read. */
import { containers } from "../../grammar/vocabulary.ts";
import type { Segment } from "../syntax/segment.ts";

export interface Group {
  readonly open: Segment;
  readonly segments: Segment[];
  readonly children: Group[];
}

/** What of a file stands for itself, and what belongs to an installation or board. */
interface Grouped {
  readonly top: readonly Segment[];
  readonly groups: readonly Group[];
}

export function groupsOf(segments: readonly Segment[]): Grouped {
  const top: Segment[] = [];
  const groups: Group[] = [];
  const stack: Group[] = [];
  for (const segment of segments) {
    for (let ended = segment.ends ?? 0; ended > 0; ended--) stack.pop();
    const current = stack.at(-1);
    if (onOneLine(segment, current)) {
      (current?.children ?? groups).push({ open: segment, segments: [segment], children: [] });
    } else if (segment.kind === "open") {
      while (stack.length > 0 && !(segment.word === "board" && stack.at(-1)?.open.word === "installation")) stack.pop();
      const group: Group = { open: segment, segments: [segment], children: [] };
      (stack.at(-1)?.children ?? groups).push(group);
      stack.push(group);
    } else {
      (current?.segments ?? top).push(segment);
      if (segment.kind === "close" && segment.fault !== "extra-close") stack.pop();
    }
  }
  return { top, groups };
}

/** `board B "Annexe" { fed-from A }`: an installation or a board that is closed on the line it begins. */
const onOneLine = (segment: Segment, outer: Group | undefined): boolean =>
  segment.kind === "block" &&
  containers.has(segment.word) &&
  (outer ? segment.word === "board" && outer.open.word === "installation" : true);
