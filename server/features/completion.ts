import { vocabulary } from "../../grammar/vocabulary.ts";
import type { Spot } from "../rules/rule.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { type Cursor, spotAt } from "./place.ts";

export type CompletionKind = "word" | "block" | "choice" | "label" | "name" | "unit" | "value";

export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail?: string;
  readonly documentation?: string;
  /** What is replaced, and by what; a snippet where it has `$`-stops. */
  readonly spot: Spot;
  readonly text: string;
  readonly isSnippet: boolean;
}

export function complete(snapshot: Snapshot, cursor: Cursor): Completion[] {
  const { segment, around } = spotAt(snapshot, cursor);
  const before = /[\w+\-/.]*$/.exec(segment.text.slice(0, cursor.offset))?.[0] ?? "";
  const spot = { segment, start: cursor.offset - before.length, end: cursor.offset };
  return Object.entries(vocabulary[around.kind]).map(([word, row]) => ({
    label: word,
    kind: "word",
    detail: row.means,
    spot,
    text: word,
    isSnippet: false,
  }));
}
