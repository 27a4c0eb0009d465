import type { TextEdit } from "../text/lines.ts";
import type { Span } from "./values.ts";

/** A change that puts a problem right, with offsets in the segment it stands in. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** Whether it may be applied without asking: it cannot change what was meant. */
  readonly safe: boolean;
  /** Whether it corrects a reading in the words of whoever misread it, and keeps what stood there. */
  readonly misread?: true;
  /** Whether it puts right a slip of the pen: what is written cannot be. */
  readonly slip?: true;
}

/** What can be wrong with the language of a file. Each has a page that `explain` shows. */
export const languageChecks = [
  "unknown-word",
  "passed-over",
  "former-word",
  "wrong-argument",
  "missing-argument",
  "missing-unit",
  "wrong-unit",
  "bound-not-read",
  "missing-quotes",
  "implausible",
  "number-slip",
  "off-scale-sign",
  "limitation-without-reason",
  "not-a-date",
  "repeated",
  "missing-block",
  "unclosed",
  "unopened",
  "extra-open",
  "extra-close",
  "no-word",
  "crowded",
  "conflict",
  "stray",
  "open-text",
  "unknown-name",
  "duplicate-name",
  "no-version",
  "newer-version",
  "use-missing",
  "use-cycle",
] as const;

export type LanguageCheck = (typeof languageChecks)[number];

export interface Problem extends Span {
  readonly check: LanguageCheck;
  readonly message: string;
  readonly fixes: readonly Fix[];
}
