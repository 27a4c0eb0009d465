import type { Mend } from "../../grammar/mends.ts";
import { word as firstWord } from "../../grammar/tokens.ts";

/**
 * A stretch of whole lines that is read on its own. The texts of a file's segments, one after another, are the file.
 * Nothing in a segment knows where in the file it stands, so a line added above does not make it new.
 */
export interface Segment {
  /** `open`/`close`: the first and last line of an installation or board. `block`: a way, a supply, an instrument. */
  readonly kind: "open" | "close" | "block" | "lines";
  /** First word of an `open` or `block` segment. */
  readonly word: string;
  readonly text: string;
  /** How many line ends the text has. */
  readonly breaks: number;
  /** `braces`: one inside is lost or too many, and `mends` say which. */
  readonly fault?: "unclosed" | "extra-close" | "braces";
  /** Braces that are read as if they stood, or did not stand, in the text. */
  readonly mends?: readonly Mend[];
  /** How many installations and boards end before it without a brace of their own. */
  readonly ends?: number;
}

/** A segment while its lines are still added. */
export interface Draft {
  readonly kind: Segment["kind"];
  readonly word: string;
  readonly start: number;
  readonly indent: number;
  end: number;
  lines: number;
  fault?: Segment["fault"];
  mends?: Mend[];
  ends?: number;
}

/** Structural words whose line stands among the plain lines. */
export const inlineStructureWords: ReadonlySet<string> = new Set(["wayfile", "use", "cable-type", "device-figures"]);

export const mayHold = (outer: string, inner: string): boolean => outer === "installation" && inner === "board";

export function finish(whole: string, draft: Draft): Segment {
  const text = whole.slice(draft.start, draft.end);
  const last = text.charCodeAt(text.length - 1);
  return {
    kind: draft.kind,
    word: draft.kind === "block" ? draft.word || (firstWord.exec(text)?.[0] ?? "") : draft.word,
    text,
    breaks: draft.lines - (last === 10 || last === 13 ? 0 : 1),
    ...(draft.fault ? { fault: draft.fault } : {}),
    ...(draft.mends ? { mends: draft.mends } : {}),
    ...(draft.ends ? { ends: draft.ends } : {}),
  };
}
