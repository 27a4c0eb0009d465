/** What the library takes and gives: plain data, complete in this file. */

/** A schedule. `use` is followed from its path, with slashes. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** Lines and characters from zero, characters in UTF-16 units. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface Place {
  readonly path: string;
  readonly start: Position;
  readonly end: Position;
  /** The same as offsets into the text. */
  readonly offset: number;
  readonly endOffset: number;
}

/** In base units: Ω, A, V, s, m, mm² for conductors, °C. */
export interface Amount {
  /** Which of several limits it is: `hot`, `cold`, `by the RCD`. */
  readonly which?: string;
  readonly amount: number;
  readonly unit: string;
}

export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export interface Finding {
  /** The check that made it, such as `loop/zs-over-limit`. */
  readonly check: string;
  readonly severity: "error" | "warning" | "information";
  /** One sentence: what is wrong, against which limit, what would put it right. */
  readonly message: string;
  readonly at: Place;
  /** `unproven` fails by a figure from memory, and would not if that were wrong in its favour. */
  readonly verdict?: "passes" | "unproven" | "fails";
  readonly value?: Amount;
  readonly limit?: Amount;
  /** What is left to the limit as a share of it; negative where it is passed. */
  readonly margin?: number;
  /** The same in words: `31 % left`. */
  readonly marginText?: string;
  /** One step a line. */
  readonly working?: string;
  readonly source?: {
    readonly ref: string;
    readonly standing: "printed" | "quoted" | "computed" | "practice" | "memory";
  };
  readonly related: readonly { readonly at: Place; readonly message: string }[];
  readonly fixes: readonly { readonly title: string; readonly safe: boolean; readonly edits: readonly Edit[] }[];
}

export interface CheckedFile {
  readonly path: string;
  readonly findings: readonly Finding[];
}

export interface Checked {
  /** The files that were given and those they use. */
  readonly files: readonly CheckedFile[];
  /** What departures suppress, with their reasons. */
  readonly suppressed: readonly { readonly finding: Finding; readonly rule: string; readonly reason: string }[];
  readonly errors: number;
  readonly warnings: number;
  readonly informations: number;
  readonly boards: number;
  readonly ways: number;
}

export interface CheckOptions {
  /** The text of a file that is used and was not given, by its path; undefined where there is none. */
  readonly read?: (path: string) => string | undefined;
}

export interface Formatted {
  /** The text in the one style; the text as it was where there is nothing to change, or where it is not safe to. */
  readonly text: string;
  readonly edits: readonly Edit[];
}

export interface Change {
  /** The way or board, such as `A/3`. */
  readonly where: string;
  /** What a person calls it, such as “Zs”. */
  readonly name: string;
  /** The day of its tests. */
  readonly on?: string;
  readonly before?: string;
  readonly after?: string;
  /** Whether it went beyond a limit that it kept before, or the other way about. */
  readonly effect?: "now fails" | "now passes";
}

export interface Compared {
  readonly title: string;
  /** Of the installation's readings and lines, how many were there to compare. */
  readonly readings: number;
  readonly lines: number;
  readonly changes: readonly Change[];
}
