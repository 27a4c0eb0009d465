import { bindSegment } from "../model/bind.ts";
import { completed } from "../model/in-place.ts";
import { innerOf } from "../model/values.ts";
import { applyEdits, type TextEdit } from "../text/lines.ts";
import { isOwnEdit } from "./shared-lines.ts";
import { WayStudy } from "./way.ts";

/**
 * The way as it would read after edits of its text, studied in the same place. Nothing where one of them may be of a
 * line that the way shares with others.
 */
export const rewritten = (study: WayStudy, edits: readonly TextEdit[]): WayStudy | undefined =>
  edits.every((edit) => isOwnEdit(study.way, edit)) ? rewrittenAt(study, edits) : undefined;

/** The same, for edits that are known to be of the way's own text. */
export function rewrittenAt(
  { way, context, boardIsThreePhase }: WayStudy,
  edits: readonly TextEdit[],
): WayStudy | undefined {
  const text = applyEdits(way.segment.text, edits);
  const segment = { ...way.segment, text };
  const header = bindSegment(segment, "board").facts.list.find(({ word }) => word === "way") as
    | typeof way.header
    | undefined;
  const facts = innerOf(header, "way");
  if (!header || !facts) return undefined;
  return new WayStudy(completed({ ...way, header, facts, segment }, way.type, boardIsThreePhase), context);
}
