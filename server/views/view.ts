/** What the live view can show, and the one way to ask for it. */
import { networkOf } from "../boards/network.ts";
import type { Drawing } from "../drawings/shapes.ts";
import type { BoardInPlace, Installation } from "../model/installation.ts";
import type { Finding } from "../rules/frame/rule.ts";
import { type BoardView, boardView } from "./board.ts";
import { singleLine } from "./single-line.ts";

export const viewKinds = ["board", "single-line"] as const;
export type ViewKind = (typeof viewKinds)[number];
export const isViewKind = (value: unknown): value is ViewKind => viewKinds.includes(value as ViewKind);

/** Drawings below each other. */
export interface DrawingsView {
  readonly kind: "drawings";
  readonly drawings: readonly Drawing[];
  /** Said where there is nothing to draw. */
  readonly nothing?: string;
}

export type View = BoardView | DrawingsView;

export interface ViewTarget {
  readonly installation: Installation;
  readonly place: BoardInPlace;
}

export function viewOf(kind: ViewKind, { installation, place }: ViewTarget, findings: readonly Finding[]): View {
  const network = networkOf(installation);
  switch (kind) {
    case "board":
      return boardView(place, network, findings);
    case "single-line":
      return { kind: "drawings", drawings: [singleLine(installation, network, network.nodeOf(place.board))] };
  }
}
