/** What the tokens of a row may be: its parameters sorted by what each asks of a token. */

import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import type { Accepts, Param, WordRow } from "../../grammar/params.ts";
import type { QuantityName } from "../../grammar/quantities.ts";
import { Memo } from "../memo/memo.ts";
import { readAs, readWritten } from "./quantity.ts";

export type Slot = readonly [name: string, param: Param];

/** A row's parameters sorted by what a token asks of them, once for each row. */
export interface RowShape {
  readonly slots: readonly Slot[];
  readonly plain: readonly Slot[];
  readonly labelled: ReadonlyMap<string, Slot>;
  readonly hasReading: boolean;
  /** Whether any of it is found by testing, be it a figure or a verdict. */
  readonly canBeRead: boolean;
  readonly quantities: ReadonlySet<QuantityName>;
}

const shapes = new Memo<WordRow, RowShape>();

export function shapeOf(row: WordRow): RowShape {
  const before = shapes.get(row);
  if (before) return before;
  const slots: readonly Slot[] = Object.entries(row.params);
  const accepted = slots.map(([, { accepts }]) => accepts);
  const shape: RowShape = {
    slots,
    plain: slots.filter(([, param]) => param.label === undefined),
    labelled: new Map(slots.flatMap((slot) => (slot[1].label === undefined ? [] : [[slot[1].label, slot]]))),
    hasReading: accepted.some(isReading),
    canBeRead: accepted.some(mayBeAbsent),
    quantities: new Set(accepted.flatMap((accepts) => (accepts.kind === "quantity" ? [accepts.of] : []))),
  };
  shapes.set(row, shape);
  return shape;
}

/** Whether the token is one of a choice's own words. */
export const says = ([, { accepts }]: Slot, token: IToken): boolean =>
  accepts.kind === "choice" && Object.hasOwn(accepts.choices, token.image);

/** Whether the token is of the kind an argument is, so that it would have been taken were there none yet. */
export function couldBe(accepts: Accepts, token: IToken): boolean {
  if (accepts.kind === "multiple") return isToken(token, "Multiple");
  if (accepts.kind === "standard") return isToken(token, "Standard");
  if (accepts.kind === "shorthand") return /^[BCD]\d+$/.test(token.image);
  if (accepts.kind === "choice") return Object.hasOwn(accepts.choices, token.image);
  if (accepts.kind !== "quantity" || !isToken(token, "Quantity")) return false;
  const written = readWritten(token.image, token.startOffset);
  return written !== undefined && "quantity" in readAs(written, accepts.of);
}

const isReading = (accepts: Accepts): boolean => accepts.kind === "quantity" && accepts.reading;
export const mayBeAbsent = (accepts: Accepts): boolean =>
  isReading(accepts) || (accepts.kind === "choice" && accepts.absent);
