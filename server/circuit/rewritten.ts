import { bindSegment } from "../model/bind.ts";
import { type CircuitTypeFact, completed } from "../model/in-place.ts";
import { type Fact, innerOf } from "../model/values.ts";
import type { Segment } from "../syntax/split.ts";
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
export const rewrittenAt = (study: WayStudy, edits: readonly TextEdit[]): WayStudy | undefined =>
  studiedAnew(study, edits, study.way.type);

/** The same, for edits of one line of the way, be it the way's own or its circuit type's. */
export function rewrittenLine(study: WayStudy, line: Fact, edits: readonly TextEdit[]): WayStudy | undefined {
  const { segment, type } = study.way;
  if (line.segment === segment) return rewrittenAt(study, edits);
  if (line.segment !== type?.segment) return undefined;
  const other = openingOf(edited(line.segment, edits), "file", "circuit-type") as CircuitTypeFact | undefined;
  return other && studiedAnew(study, [], other);
}

const edited = (segment: Segment, edits: readonly TextEdit[]): Segment =>
  edits.length === 0 ? segment : { ...segment, text: applyEdits(segment.text, edits) };

const openingOf = (segment: Segment, within: "board" | "file", word: string): Fact | undefined =>
  bindSegment(segment, within).facts.list.find((fact) => fact.word === word);

function studiedAnew(
  { way, context, boardIsThreePhase }: WayStudy,
  edits: readonly TextEdit[],
  type: CircuitTypeFact | undefined,
): WayStudy | undefined {
  const segment = edited(way.segment, edits);
  const header = openingOf(segment, "board", "way") as typeof way.header | undefined;
  const facts = innerOf(header, "way");
  if (!header || !facts) return undefined;
  return new WayStudy(completed({ ...way, header, facts, segment }, type, boardIsThreePhase), context);
}
