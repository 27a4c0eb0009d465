import type { Board, Way } from "../model/file.ts";
import { factSpot, type Spot } from "../rules/rule.ts";
import type { Segment } from "../syntax/split.ts";
import type { Snapshot } from "../workspace/workspace.ts";

export type SymbolKind = "installation" | "supply" | "board" | "way" | "instrument" | "cable-type";

/** An entry of the outline. `whole` runs from its first line to its last. */
export interface OutlineSymbol {
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  readonly from: Spot;
  readonly to: Spot;
  readonly name_: Spot;
  readonly children: readonly OutlineSymbol[];
}

export function symbols(snapshot: Snapshot): OutlineSymbol[] {
  const { model } = snapshot.file;
  return [
    ...model.installations.map(({ head, boards }) => {
      const name_ = factSpot(head.header);
      const last = boards.at(-1)?.segments.at(-1) ?? head.header.segment;
      return {
        name: head.title || "installation",
        detail: "",
        kind: "installation" as const,
        from: name_,
        to: endOfSegment(last),
        name_,
        children: boards.map(boardSymbol),
      };
    }),
    ...model.boards.map(boardSymbol),
  ];
}

function boardSymbol({ head, ways, segments }: Board): OutlineSymbol {
  const name_ = factSpot(head.header);
  return {
    name: head.name || "board",
    detail: head.title,
    kind: "board",
    from: name_,
    to: endOfSegment(segments.at(-1) ?? head.header.segment),
    name_,
    children: ways.map(waySymbol),
  };
}

function waySymbol(way: Way): OutlineSymbol {
  const name_ = factSpot(way.header);
  return {
    name: `${way.id} ${way.title}`.trim() || "way",
    detail: way.kind ?? "",
    kind: "way",
    from: name_,
    to: endOfSegment(way.segment),
    name_,
    children: [],
  };
}

const endOfSegment = (segment: Segment): Spot => {
  const end = segment.text.trimEnd().length;
  return { segment, start: end, end };
};
