import type { Mend } from "../../grammar/mends.ts";
import { word as firstWord } from "../../grammar/tokens.ts";
import type { Cuttable, Lines } from "./lines.ts";

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

/** A segment while its lines are still added: where it stands in the text, of which nothing is cut out yet. */
export interface Draft {
  readonly kind: Segment["kind"];
  /** Empty where a block begins with a word that dividing does not ask for. */
  readonly word: string;
  readonly start: number;
  end: number;
  lines: number;
  fault?: Segment["fault"];
  mends?: Mend[];
  ends?: number;
}

/** One that begins with a line. */
export const draftAt = (lines: Lines, line: number, kind: Segment["kind"], word: string): Draft => ({
  kind,
  word,
  start: lines.start(line),
  end: lines.end(line),
  lines: lines.height(line),
});

/** The line behind its last belongs to it too. */
export function extendTo(draft: Draft, lines: Lines, line: number): void {
  draft.end = lines.end(line);
  draft.lines += lines.height(line);
}

/** Structural words whose line stands among the plain lines. */
export const inlineStructureWords: ReadonlySet<string> = new Set(["wayfile", "use", "cable-type", "device-figures"]);

export const mayHold = (outer: string, inner: string): boolean => outer === "installation" && inner === "board";

export function finish(whole: Cuttable, draft: Draft): Segment {
  const text = whole.slice(draft.start, draft.end);
  const last = text.charCodeAt(text.length - 1);
  return {
    kind: draft.kind,
    word: wordOf(draft, text),
    text,
    breaks: draft.lines - (last === 10 || last === 13 ? 0 : 1),
    ...(draft.fault ? { fault: draft.fault } : {}),
    ...(draft.mends ? { mends: draft.mends } : {}),
    ...(draft.ends ? { ends: draft.ends } : {}),
  };
}

const wordOf = (draft: Draft, text: string): string =>
  draft.kind === "block" && draft.word === "" ? (firstWord.exec(text)?.[0] ?? "") : draft.word;

/** Whether a segment is what a draft comes to, where the text is the same. */
export const isDraftOf = (segment: Segment, draft: Draft): boolean =>
  segment.kind === draft.kind &&
  segment.fault === draft.fault &&
  segment.ends === draft.ends &&
  sameMends(segment.mends, draft.mends) &&
  segment.word === wordOf(draft, segment.text);

export const isSame = (a: Segment | undefined, b: Segment | undefined): boolean =>
  a !== undefined &&
  b !== undefined &&
  a.text === b.text &&
  a.kind === b.kind &&
  a.fault === b.fault &&
  a.word === b.word &&
  a.ends === b.ends &&
  sameMends(a.mends, b.mends);

function sameMends(a: Segment["mends"], b: Segment["mends"]): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a.length === b.length && a.every(({ kind, at }, index) => kind === b[index]?.kind && at === b[index]?.at);
}
