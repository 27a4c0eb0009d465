/** Requests of the live view. The extension and its page import only these types. */
import type { View, ViewKind } from "../views/view.ts";
import type { Placed } from "./placed.ts";

/** The live view of a board: the one that is named, else the one at a position, else the first. */
export interface ViewQuestion {
  readonly uri: string;
  readonly view: ViewKind;
  readonly board?: string;
  readonly position?: { readonly line: number; readonly character: number };
}

export interface BoardName {
  readonly key: string;
  readonly name: string;
  readonly title: string;
}

export interface ViewAnswer {
  /** Of the document it was made of. */
  readonly version?: number;
  readonly title: string;
  readonly boards: readonly BoardName[];
  /** The board that is shown, and the way at the position that was asked about. */
  readonly board?: string;
  readonly way?: string;
  readonly content?: Placed<View>;
  /** Said where there is nothing to show. */
  readonly nothing?: string;
}

export const viewRequest = "wayfile/view";
