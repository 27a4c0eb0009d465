import type { TextEdit } from "../text/lines.ts";
import type { Span } from "./values.ts";

/** A change that puts a problem right, with offsets in the segment it stands in. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** Whether it may be applied without asking: it cannot change what was meant. */
  readonly safe: boolean;
}

/** What can be wrong with the language of a file. Each has a page that `explain` shows. */
export const languageChecks = {
  "unknown-word": "A word that is not a word of the language, or not in this block.",
  "wrong-argument": "A word is followed by something it does not take.",
  "missing-argument": "A word lacks something it needs.",
  "missing-unit": "A number stands without its unit. Half of all wrong readings are right numbers in the wrong unit.",
  "wrong-unit": "A quantity is written in a unit of another kind, or one this figure is never written in.",
  "bound-not-read": "A > or < stands before what nobody reads on a meter: a size, a length, a rating.",
  "missing-quotes": "Words that are not the language's own stand without quotes.",
  implausible: "A figure is so large or small that its unit or its decimal point must be wrong.",
  "number-slip": "A decimal comma, a bare point or a letter O stands in a number. It is never guessed.",
  "off-scale-sign": "No meter measures infinity. Off scale is written with the range: >999 MΩ.",
  "limitation-without-reason": "A limitation says why the test was not made.",
  "not-a-date": "A date that is in no calendar.",
  repeated: "A word that may stand once in its block stands twice.",
  "missing-block": "A word that opens a block stands without one.",
  unclosed: "A block is not closed.",
  unopened: "A block has lost its opening brace.",
  "extra-open": "An opening brace opens nothing.",
  "extra-close": "A closing brace closes nothing.",
  "no-word": "A line does not begin with a word.",
  crowded: "A statement stands on the line of another.",
  conflict: "A merge conflict was left in the file.",
  stray: "A character that means nothing here.",
  "open-text": "A text has lost its closing quote.",
  "unknown-name": "A name is used that nothing defines.",
  "duplicate-name": "A name is defined twice. A reference could mean either.",
  "no-version": "The first statement says which version of the language the file is in.",
  "newer-version": "The file is in a version of the language that this program does not know.",
  "use-missing": "A file that is used cannot be read.",
  "use-cycle": "Files use each other in a circle.",
} as const;

export type LanguageCheck = keyof typeof languageChecks;

export interface Problem extends Span {
  readonly check: LanguageCheck;
  readonly message: string;
  readonly fixes: readonly Fix[];
}
