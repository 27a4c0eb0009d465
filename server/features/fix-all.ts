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
  const taken: SegmentEdit[] = [];
  for (const { spot, fixes } of findings) {
    const fix = fixes.find(({ safe }) => safe);
    if (fix && !clashes(taken, spot.segment, fix)) {
      taken.push(...fix.edits.map((edit) => ({ ...edit, segment: spot.segment })));
    }
  }
  return taken;
}

const clashes = (taken: readonly SegmentEdit[], segment: Segment, { edits }: Fix): boolean =>
  taken.some(
    (other) => other.segment === segment && edits.some(({ start, end }) => start <= other.end && end >= other.start),
  );
