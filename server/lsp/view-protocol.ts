/** Requests of the live view. The extension and its page import only these types. */
import type { ViewKind } from "../views/kinds.ts";
import type { View } from "../views/view.ts";
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

/** A reading of a way, to be written into the text. `row` is the way as the grid knows it, with its point if it has one. */
export interface EntryQuestion {
  readonly board: string;
  readonly row: string;
  readonly column: string;
  readonly point?: string;
  readonly text: string;
  readonly day: string;
  readonly instrument?: string;
  /** Why what stands there for that day is corrected. */
  readonly why?: string;
  /** What was written there a moment ago by the same person. */
  readonly draft?: string;
}

export interface EntryAnswer {
  /** Of the document the edit is of. */
  readonly version?: number;
  /** In which document, where it is another than the one that was asked about. */
  readonly uri?: string;
  readonly edit?: { readonly range: Range; readonly newText: string };
  /** The reading as it is written. */
  readonly written?: string;
  readonly stands?: string;
  readonly problem?: string;
}

interface Range {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

export const entryRequest = "wayfile/enter";
