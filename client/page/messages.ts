/** What the page of the live view and whoever shows it say to each other. Nothing else goes over. */
import type { At } from "../../server/lsp/placed.ts";
import type { EntryQuestion, ViewAnswer } from "../../server/lsp/view-protocol.ts";
import type { ViewKind } from "../../server/views/kinds.ts";

export type ToPage =
  | { readonly kind: "view"; readonly view: ViewKind; readonly answer: ViewAnswer }
  /** Where the cursor is in the schedule. */
  | { readonly kind: "cursor"; readonly line: number }
  | { readonly kind: "entered"; readonly entered: Entered }
  | { readonly kind: "failed"; readonly message: string };

/** What became of a reading that was entered. */
export interface Entered {
  readonly row: string;
  readonly column: string;
  /** As it was typed, and as it was written. */
  readonly text: string;
  readonly written?: string;
  /** What stands there already: why it is to be another is asked for. */
  readonly stands?: string;
  readonly problem?: string;
}

export interface EnterMessage extends EntryQuestion {
  readonly kind: "enter";
}

export type FromPage =
  /** The page is up and wants a view; it says this again whenever it wants another. */
  | { readonly kind: "show"; readonly view: ViewKind; readonly board?: string }
  /** A reading, to be written into the schedule. */
  | EnterMessage
  | { readonly kind: "undo" }
  /** To go to a line: only a person's click or key asks for it. */
  | { readonly kind: "reveal"; readonly at: At };

/** The other side, as the page sees it: an editor's, or that of a page of its own. */
export interface Host {
  send(message: FromPage): void;
  receive(take: (message: ToPage) => void): void;
  /** What is kept while the page is hidden or the editor restarts. */
  load(): unknown;
  save(state: unknown): void;
}
