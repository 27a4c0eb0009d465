/** A line while it is read, and what a slip of the pen in it is answered with. */
import type { IToken } from "chevrotain";
import type { WordRow } from "../../grammar/params.ts";
import type { Problem } from "./problems.ts";
import type { RowShape, Slot } from "./row-shape.ts";
import type { AnyValue } from "./values.ts";

export interface LineBeingRead {
  readonly word: IToken;
  readonly row: WordRow;
  readonly shape: RowShape;
  readonly tokens: readonly IToken[];
  /** Which is the first token that nothing has taken yet. */
  readonly at: number;
  /** That token. None is left once all of the line is taken: then only what it lacks is asked for. */
  readonly token: IToken;
  readonly args: Readonly<Record<string, AnyValue | readonly AnyValue[]>>;
  /** Parameters that can still take a value. */
  free(): Slot[];
}

/** What a slip is answered with, and the first token after it. */
export interface Slip {
  readonly problem: Problem;
  readonly upTo: number;
}

/** Looks for one kind of slip at a token that nothing takes. */
export type SlipReader = (line: LineBeingRead) => Slip | undefined;
