/** What a person has chosen in the live view: it is kept from one day to the next. */
import type { ViewKind } from "../../server/views/kinds.ts";

export interface Chosen {
  readonly view: ViewKind;
  /** A board that was picked; none where the view follows the cursor. */
  readonly board?: string;
  readonly sort: "order" | "margin";
  readonly onlyOpen: boolean;
  /** Of drawings, by their natural size; nothing where each fits the width of the page. */
  readonly zoom?: number;
}

const initial: Chosen = { view: "board", sort: "order", onlyOpen: false };

export const views: readonly (readonly [ViewKind, string])[] = [
  ["board", "Board"],
  ["tests", "Enter tests"],
  ["single-line", "Single line"],
  ["rings", "Rings"],
  ["limits", "Limits"],
  ["conduits", "Conduits"],
  ["years", "Years"],
  ["working", "Working"],
  ["worksheet", "Worksheet"],
  ["schedule", "Schedule"],
  ["inspection", "Inspection"],
];

/** What was saved by another version may be anything. */
export function chosenFrom(saved: unknown): Chosen {
  if (typeof saved !== "object" || saved === null) return initial;
  const { view, board, sort, onlyOpen, zoom } = saved as Record<string, unknown>;
  const known = views.find(([kind]) => kind === view)?.[0];
  return {
    view: known ?? initial.view,
    ...(typeof board === "string" ? { board } : {}),
    sort: sort === "margin" ? "margin" : "order",
    onlyOpen: onlyOpen === true,
    ...(typeof zoom === "number" && zoom >= 0.5 && zoom <= 4 ? { zoom } : {}),
  };
}
