/** What completion offers, and the half-written line it is offered for. */
import type { IToken } from "chevrotain";
import type { Spot } from "../rules/frame/rule.ts";
import type { Markdown } from "../text/markdown.ts";

type CompletionKind = "word" | "block" | "choice" | "label" | "name" | "unit" | "value" | "file";

export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail?: string;
  readonly documentation?: Markdown;
  /** What it is called on site: these find it too. */
  readonly aliases: readonly string[];
  /** What is replaced. */
  readonly spot: Spot;
  readonly text: string;
  /** The same as a snippet with stops, where it has any. */
  readonly snippet?: string;
  /** Whether more usually follows on its line, so that an editor may go on to it at once. */
  readonly goesOn?: boolean;
}

/** An offer before it is known what it replaces. */
export type Offer = Omit<Completion, "spot" | "text" | "aliases"> & {
  readonly text?: string;
  readonly aliases?: readonly string[];
};

/** The line as far as it matters: its words before the cursor, the piece being typed, what stands behind. */
export interface HalfLine {
  readonly word: IToken | undefined;
  readonly before: readonly IToken[];
  readonly after: readonly IToken[];
  readonly typed: string;
  readonly start: number;
  /** A word is begun behind a closing brace: it belongs on a line of its own. */
  readonly isBehindClose: boolean;
}
