/** Every fix that cannot change what was meant, at once. */
import type { Fix } from "../model/problems.ts";
import type { Segment } from "../syntax/split.ts";
import type { TextEdit } from "../text/lines.ts";
import type { Snapshot } from "../workspace/workspace.ts";

interface SegmentEdit extends TextEdit {
  readonly segment: Segment;
}

/** Where two fixes would touch the same place the first is taken; the other is offered again afterwards. */
export function safeEdits({ findings }: Pick<Snapshot, "findings">): SegmentEdit[] {
  const taken = new Map<Segment, SegmentEdit[]>();
  for (const { spot, fixes } of findings) {
    const { segment } = spot;
    const fix = fixes.find(({ safe }) => safe);
    const there = taken.get(segment) ?? [];
    if (fix && !clashes(there, fix)) {
      there.push(...fix.edits.map((edit) => ({ ...edit, segment })));
      taken.set(segment, there);
    }
  }
  return [...taken.values()].flat();
}

const clashes = (taken: readonly SegmentEdit[], { edits }: Fix): boolean =>
  taken.some((other) => edits.some(({ start, end }) => start <= other.end && end >= other.start));
