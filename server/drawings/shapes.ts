/**
 * A drawing as plain data: simple shapes with a role instead of a colour, and with the place in the text that each of
 * them stands for. Whoever shows it turns it into SVG; a table with the same content goes with every drawing.
 */
import type { Segment } from "../syntax/split.ts";

/** What a shape stands for: a place in a segment, whichever line that is at the moment. */
export interface Mark {
  readonly segment: Segment;
  readonly offset: number;
}

/**
 * What a shape means; the page decides how that looks. `unsure` is what is beyond a limit from memory by less than that
 * may be wrong, `missing` what should be there and is not.
 */
export type Role =
  | "rule"
  | "wire"
  | "busbar"
  | "board"
  | "limit"
  | "band"
  | "expected"
  | "reading"
  | "over"
  | "unsure"
  | "missing"
  | "suspect"
  | "paper"
  | "brown"
  | "black"
  | "grey"
  | "blue"
  | "green"
  | "yellow";

export type TextRole =
  | "label"
  | "title"
  | "figure"
  | "note"
  | "over"
  | "unsure"
  | "missing"
  | "calculated"
  | "onDark"
  | "onLight";

/** Lengths in the units of the drawing, which are CSS pixels at its natural size. */
export type PlainShape =
  | {
      readonly kind: "line";
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly role: Role;
      readonly width?: number;
    }
  | {
      readonly kind: "path";
      readonly d: string;
      readonly role: Role;
      readonly width?: number;
      readonly filled?: boolean;
    }
  | {
      readonly kind: "circle";
      readonly x: number;
      readonly y: number;
      readonly r: number;
      readonly role: Role;
      readonly width?: number;
      readonly filled?: boolean;
    }
  | {
      readonly kind: "rect";
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly role: Role;
      readonly filled?: boolean;
      readonly line?: number;
    }
  | {
      readonly kind: "text";
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly role: TextRole;
      readonly anchor?: "middle" | "end";
      /** In place of the usual size. */
      readonly size?: number;
    };

export type Shape = PlainShape | Group;

/** Shapes that are one thing: it is named, and leads to its line where it has a mark. */
export interface Group {
  readonly kind: "group";
  readonly label: string;
  readonly mark?: Mark;
  /** What a thing is known by from one drawing to the next: focus stays on it. */
  readonly key: string;
  readonly shapes: readonly Shape[];
}

export interface TableCell {
  readonly text: string;
  readonly mark?: Mark;
}

/** The same content in rows, for those who read rather than look. */
export interface DrawingTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly TableCell[])[];
}

export interface Drawing {
  readonly title: string;
  /** What is to be seen, for those who cannot see it. */
  readonly description: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  readonly table?: DrawingTable;
  /** Sentences below the drawing. */
  readonly notes: readonly string[];
}

export const line = (
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  role: Role = "wire",
  width?: number,
): PlainShape => ({
  kind: "line",
  x1,
  y1,
  x2,
  y2,
  role,
  ...(width === undefined ? {} : { width }),
});

export const text = (
  x: number,
  y: number,
  words: string,
  role: TextRole = "label",
  anchor?: "middle" | "end",
): PlainShape => ({ kind: "text", x, y, text: words, role, ...(anchor ? { anchor } : {}) });

export const group = (key: string, label: string, mark: Mark | undefined, shapes: readonly Shape[]): Group => ({
  kind: "group",
  key,
  label,
  ...(mark ? { mark } : {}),
  shapes,
});

/** A title cut to what there is room for. */
export const cut = (words: string, longest: number): string =>
  words.length > longest ? `${words.slice(0, longest - 1).trimEnd()}…` : words;

/** Two decimals are finer than any screen. */
export const rounded = (value: number): number => Math.round(value * 100) / 100;
