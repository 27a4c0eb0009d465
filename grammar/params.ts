import type { MeteredName, QuantityName } from "./quantities.ts";
import type { ReadingFigures, Reads, Traits } from "./traits.ts";

/** One word of a closed list, with the meaning a hover shows. */
export type Choices = Readonly<Record<string, string>>;

/** Names a schedule defines once and uses elsewhere. */
export type NameKind = "board" | "rcd" | "instrument" | "cable-type" | "circuit-type" | "containment" | "point" | "way";

interface Shape {
  readonly kind: string;
  /** As a message has it: "the size of the protective conductor". */
  readonly help: string;
}

/** What may stand for one argument. The kind decides which tokens can fill it, so order rarely matters. */
export type Accepts =
  | (Shape & { readonly kind: "quantity"; readonly of: QuantityName; readonly reading: boolean })
  | (Shape & { readonly kind: "choice"; readonly choices: Choices; readonly absent: boolean })
  | (Shape & { readonly kind: "define"; readonly names: NameKind })
  | (Shape & { readonly kind: "ref"; readonly names: NameKind; readonly builtin?: Choices })
  | (Shape & { readonly kind: "text" })
  | (Shape & { readonly kind: "date" })
  | (Shape & { readonly kind: "standard"; readonly of: "wiring" | "product" })
  | (Shape & { readonly kind: "shorthand" })
  | (Shape & { readonly kind: "count" })
  | (Shape & { readonly kind: "multiple" })
  | (Shape & { readonly kind: "name" })
  | (Shape & { readonly kind: "roughTime" })
  | (Shape & { readonly kind: "rule" })
  | (Shape & { readonly kind: "path" });

/** How an argument stands in its line. */
export interface Param<
  A extends Accepts = Accepts,
  Optional extends boolean = boolean,
  Many extends boolean = boolean,
> {
  readonly accepts: A;
  readonly optional: Optional;
  readonly many: Many;
  /** The word written before the value: `cpc 2.5 mm²`. */
  readonly label?: string;
}

type Required<A extends Accepts> = Param<A, false, false>;

const required = <A extends Accepts>(accepts: A): Required<A> => ({ accepts, optional: false, many: false });

/** May be left out. */
export const opt = <A extends Accepts, M extends boolean>(param: Param<A, boolean, M>): Param<A, true, M> => ({
  ...param,
  optional: true,
});

/** One or more. */
export const many = <A extends Accepts, O extends boolean>(param: Param<A, O>): Param<A, O, true> => ({
  ...param,
  many: true,
});

/** Written after a word of its own. */
export const label = <A extends Accepts, O extends boolean, M extends boolean>(
  text: string,
  param: Param<A, O, M>,
): Param<A, O, M> => ({ ...param, label: text });

export const quantity = <Q extends QuantityName>(of: Q, help: string) =>
  required({ kind: "quantity" as const, of, reading: false, help });

/** A measured quantity: may be off scale, a limitation or not applicable, and may say where it came from. */
export const reading = <Q extends MeteredName>(of: Q, help: string) =>
  required({ kind: "quantity" as const, of, reading: true, help });

export const choice = <const C extends Choices>(choices: C, help: string) =>
  required({ kind: "choice" as const, choices, absent: false, help });

/** The result of an inspection: a choice, or a limitation, or not applicable. */
export const verdict = <const C extends Choices>(choices: C, help: string) =>
  required({ kind: "choice" as const, choices, absent: true, help });

export const define = (names: NameKind, help: string) => required({ kind: "define" as const, names, help });
export const ref = (names: NameKind, help: string, builtin?: Choices) =>
  required({ kind: "ref" as const, names, help, ...(builtin ? { builtin } : {}) });
export const text = (help: string) => required({ kind: "text" as const, help });
export const date = (help: string) => required({ kind: "date" as const, help });
export const wiringStandard = (help: string) => required({ kind: "standard" as const, of: "wiring" as const, help });
export const productStandard = (help: string) => required({ kind: "standard" as const, of: "product" as const, help });
export const shorthand = (help: string) => required({ kind: "shorthand" as const, help });
export const count = (help: string) => required({ kind: "count" as const, help });
export const multiple = (help: string) => required({ kind: "multiple" as const, help });
/** A name that nothing defines. */
export const anyName = (help: string) => required({ kind: "name" as const, help });
/** A year, or about, before or after one. */
export const roughTime = (help: string) => required({ kind: "roughTime" as const, help });
export const rule = (help: string) => required({ kind: "rule" as const, help });
export const path = (help: string) => required({ kind: "path" as const, help });

export type Params = Readonly<Record<string, Param>>;

/** One word in one kind of block: the only place where it is spelt, with everything stated of it anywhere. */
export interface WordRow<P extends Params = Params> extends Traits {
  readonly params: P;
  /** One line: what the statement says. Completion and hover show it. */
  readonly means: string;
  /** Trade background: why it is written, how it is found. */
  readonly background?: string;
  /** Where its limits come from. */
  readonly limits?: string;
  /** How often it may stand in its block. */
  readonly times: "once" | "often";
  /** The kind of block it opens, if it opens one. */
  readonly opens?: string;
  /** Whether the block may be left out, as in `way 9 spare`. */
  readonly blockOptional?: boolean;
  /** A line as a person would write it: the reference's example, and what completion shows beside the word. */
  readonly example: string;
}

type IsRead<A extends Accepts> = A extends { kind: "quantity"; reading: true } | { kind: "choice"; absent: true }
  ? true
  : false;

/** The arguments of a row that are read: quantities of a meter, and verdicts. */
type ReadNames<P extends Params> = {
  [N in keyof P]: P[N] extends Param<infer A, boolean, boolean> ? (IsRead<A> extends true ? N : never) : never;
}[keyof P];

/** Rows that hold a reading have to say how it is read; others must not. */
type TraitsOf<P extends Params> = [ReadNames<P>] extends [never]
  ? Omit<Traits<keyof P & string>, "reads">
  : Traits<keyof P & string> & { readonly reads: Reads<keyof P & string>; readonly figures: ReadingFigures };

/** Arguments by which a line gives itself a name. */
type DefineNames<P extends Params> = {
  [N in keyof P]: P[N] extends Param<infer A, boolean, boolean> ? (A extends { kind: "define" } ? N : never) : never;
}[keyof P];

/** What may stand often is distinguished by a name, by what is read, or by a key of its own. */
type ToldApart<P extends Params> = [ReadNames<P> | DefineNames<P>] extends [never]
  ? { readonly key: readonly (keyof P & string)[] } | { readonly follows: string }
  : unknown;

/** What a row says besides its arguments; what it must say of readings follows from those. */
type Wording<P extends Params> = Omit<WordRow, "params" | "times" | keyof Traits> & TraitsOf<P>;

export const once = <const P extends Params>(params: P, wording: Wording<P>): WordRow<P> => ({
  params,
  times: "once",
  ...wording,
});

export const often = <const P extends Params>(params: P, wording: Wording<P> & ToldApart<P>): WordRow<P> => ({
  params,
  times: "often",
  ...wording,
});
