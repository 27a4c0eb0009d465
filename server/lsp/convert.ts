/** The one place where a spot in a segment becomes a line and a column, counted in UTF-16 as the protocol does. */
import {
  type DocumentSymbol,
  type Location,
  type Position,
  type Range,
  SymbolKind,
  type TextEdit,
} from "vscode-languageserver";
import type { OutlineSymbol } from "../features/symbols.ts";
import type { Spot } from "../rules/frame/rule.ts";
import { type Document, type Positions, textOf } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import { type TextEdit as CoreEdit, lineStarts, positionOf } from "../text/lines.ts";
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
    return { uri: workspace.uri(snapshot.file.path), range: rangeOf(snapshot.positions, spot) };
  }
  const file = fileOfSegment(snapshot, spot.segment);
  return file && { uri: workspace.uri(file.path), range: rangeOf(workspace.positionsOf(file), spot) };
}

/** Edits with offsets in the whole file. */
export function fileEdits(document: Document, edits: readonly CoreEdit[]): TextEdit[] {
  const starts = lineStarts(textOf(document));
  return edits.map(({ start, end, text }) => ({
    range: { start: positionOf(starts, start), end: positionOf(starts, end) },
    newText: text,
  }));
}

const before = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);

/** Whether two ranges share a place, their ends included. */
export const touching = (a: Range, b: Range): boolean => !before(a.end, b.start) && !before(b.end, a.start);

const symbolKinds: Readonly<Record<OutlineSymbol["kind"], SymbolKind>> = {
  installation: SymbolKind.Package,
  supply: SymbolKind.Interface,
  board: SymbolKind.Module,
  way: SymbolKind.Field,
  instrument: SymbolKind.Constant,
  "cable-type": SymbolKind.Struct,
  "circuit-type": SymbolKind.Struct,
};

export const symbolKind = ({ kind }: Pick<OutlineSymbol, "kind">): SymbolKind => symbolKinds[kind];

export function documentSymbol(positions: Positions, symbol: OutlineSymbol): DocumentSymbol {
  const selectionRange = rangeOf(positions, symbol.header);
  const { end } = rangeOf(positions, symbol.end);
  return {
    name: symbol.name,
    ...(symbol.detail === "" ? {} : { detail: symbol.detail }),
    kind: symbolKinds[symbol.kind],
    range: { start: selectionRange.start, end: before(end, selectionRange.end) ? selectionRange.end : end },
    selectionRange,
    children: symbol.children.map((child) => documentSymbol(positions, child)),
  };
}
