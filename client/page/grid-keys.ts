/** Where a key leads in the grid, and what it does there: plain data, so that a component has only to obey. */
import type { GridCell, GridColumn } from "../../server/views/grid.ts";

export interface Place {
  readonly row: string;
  readonly column: string;
}

/** A row as far as keys are concerned. */
interface Row {
  readonly key: string;
  readonly cells: readonly Pick<GridCell, "column" | "text">[];
}

export const idOf = ({ row, column }: Place): string => `${row}|${column}`;
const isSame = (a: Place, b: Place): boolean => idOf(a) === idOf(b);

/** What a person has before them when a key is pressed. */
export interface Before {
  readonly rows: readonly Row[];
  readonly columns: readonly Pick<GridColumn, "key" | "words">[];
  readonly here: Place;
  /** What is being typed in that cell, if anything is. */
  readonly typed: string | undefined;
  /** What was entered here a moment ago, if anything was: the text of the schedule may not have it yet. */
  draftOf(place: Place): string | undefined;
}

/** Of a keyboard event, what distinguishes one key from another. */
interface Key {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

/** `commit` writes into the schedule what is not empty, and goes on. */
export type Action =
  | { readonly does: "commit"; readonly text: string; readonly to: Place | undefined; readonly leaves?: true }
  | { readonly does: "type"; readonly text: string | undefined }
  | { readonly does: "move"; readonly to: Place | undefined }
  | { readonly does: "undo" | "dismiss" };

export const orderOf = (rows: readonly Row[]): Place[] =>
  rows.flatMap(({ key, cells }) => cells.map(({ column }) => ({ row: key, column })));

const cellAt = (rows: readonly Row[], { row, column }: Place) =>
  rows.find(({ key }) => key === row)?.cells.find((cell) => cell.column === column);

/** The next reading that is still to be made, else the next cell. */
function next({ rows, here, draftOf }: Before, back: boolean): Place | undefined {
  const order = orderOf(rows);
  const index = order.findIndex((one) => isSame(one, here));
  if (back) return order[index - 1];
  const isOpen = (place: Place): boolean => cellAt(rows, place)?.text === "" && draftOf(place) === undefined;
  return order.slice(index + 1).find(isOpen) ?? order[index + 1];
}

/** The cell beside or, in the nearest row that has one, above or below. */
function step({ rows, here }: Before, down: number, across: number): Place | undefined {
  const order = orderOf(rows);
  if (across !== 0) return order[order.findIndex((one) => isSame(one, here)) + across];
  for (let index = rows.findIndex(({ key }) => key === here.row) + down; rows[index]; index += down) {
    const row = rows[index];
    if (row?.cells.some(({ column }) => column === here.column)) return { row: row.key, column: here.column };
  }
  return undefined;
}

/** The reading of the cell before, in the same row. */
function leftOf({ rows, here, draftOf }: Before): string {
  const cells = rows.find(({ key }) => key === here.row)?.cells ?? [];
  const before = cells[cells.findIndex(({ column }) => column === here.column) - 1];
  if (!before) return "";
  return draftOf({ row: here.row, column: before.column }) ?? before.text;
}

const commit = (text: string, to: Place | undefined): Action => ({ does: "commit", text, to });

function goOnByTab(before: Before, back: boolean): Action | undefined {
  const to = next(before, back);
  if (to) return commit(before.typed ?? "", to);
  // At either end the Tab key leaves the grid.
  return before.typed === undefined ? undefined : { does: "commit", text: before.typed, to: undefined, leaves: true };
}

const goBy = (before: Before, down: number, across: number): Action =>
  commit(before.typed ?? "", step(before, down, across) ?? before.here);

const rowOf = ({ rows, here }: Before): Place[] => orderOf(rows).filter(({ row }) => row === here.row);

/** What keys with a name do. `back`: with the Shift key held. */
const namedKeys: Readonly<Record<string, (before: Before, back: boolean) => Action | undefined>> = {
  Enter: (before, back) => commit(before.typed ?? "", next(before, back)),
  Tab: goOnByTab,
  Escape: ({ typed }) => (typed === undefined ? { does: "dismiss" } : { does: "type", text: undefined }),
  F2: ({ rows, here }) => ({ does: "type", text: cellAt(rows, here)?.text ?? "" }),
  ArrowUp: (before) => goBy(before, -1, 0),
  ArrowDown: (before) => goBy(before, 1, 0),
  // While one types, these are within the word.
  ArrowLeft: whileNothingIsTyped((before) => goBy(before, 0, -1)),
  ArrowRight: whileNothingIsTyped((before) => goBy(before, 0, 1)),
  Home: whileNothingIsTyped((before) => ({ does: "move", to: rowOf(before)[0] })),
  End: whileNothingIsTyped((before) => ({ does: "move", to: rowOf(before).at(-1) })),
};

function whileNothingIsTyped(act: (before: Before) => Action): (before: Before) => Action | undefined {
  return (before) => (before.typed === undefined ? act(before) : undefined);
}

/** What a key does; nothing for one that is the editor's or the browser's own. */
export function actionOf({ key, shiftKey, ctrlKey, metaKey, altKey }: Key, before: Before): Action | undefined {
  const isNew = before.typed === undefined;
  if (ctrlKey || metaKey) return key.toLowerCase() === "z" && isNew ? { does: "undo" } : undefined;
  if (altKey) return undefined;
  const act = namedKeys[key];
  if (act) return act(before, shiftKey);
  return isNew && key.length === 1 ? sign(key, before) : undefined;
}

/** A sign with which an entry begins, or is whole. */
function sign(key: string, before: Before): Action | undefined {
  const whole = (text: string): Action => commit(text, next(before, false));
  if (key === "=") {
    const text = leftOf(before);
    return text === "" ? { does: "move", to: undefined } : whole(text);
  }
  const words = before.columns.find((column) => column.key === before.here.column)?.words ?? [];
  const word = words.find((one) => one.startsWith(key.toLowerCase())) ?? (key === " " ? words[0] : undefined);
  if (word) return whole(word);
  return /[\d.<>a-zA-Z]/.test(key) ? { does: "type", text: key } : undefined;
}
