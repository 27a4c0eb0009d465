/** The one place where a spot in a segment becomes a line and a column, counted in UTF-16 as the protocol does. */
import type { Location, Position, Range, TextEdit } from "vscode-languageserver";
import type { Spot } from "../rules/rule.ts";
import type { Positions } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import type { TextEdit as CoreEdit } from "../text/lines.ts";
import { fileOfSegment, type Snapshot, type Workspace } from "../workspace/workspace.ts";

export const rangeOf = (positions: Positions, { segment, start, end }: Spot): Range => ({
  start: positions.place(segment, start),
  end: positions.place(segment, end),
});

export const editOf = (positions: Positions, segment: Segment, { start, end, text }: CoreEdit): TextEdit => ({
  range: rangeOf(positions, { segment, start, end }),
  newText: text,
});

/** A spot in whichever file of the project it is. */
export function locationOf(workspace: Workspace, snapshot: Snapshot, spot: Spot): Location | undefined {
  if (snapshot.positions.has(spot.segment)) {
    return { uri: snapshot.file.path, range: rangeOf(snapshot.positions, spot) };
  }
  const file = fileOfSegment(snapshot.project, spot.segment);
  return file && { uri: file.path, range: rangeOf(workspace.positionsOf(file), spot) };
}

export const before = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);
