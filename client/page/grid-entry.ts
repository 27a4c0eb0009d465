/** What a grid for test readings holds while a person enters them, as hooks of its components. */
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Placed } from "../../server/lsp/placed.ts";
import type { GridColumn, GridView } from "../../server/views/grid.ts";
import type { Row } from "./grid-cell.tsx";
import { idOf, orderOf, type Place } from "./grid-keys.ts";
import { answered, closed, type GridState, moved, untouched } from "./grid-state.ts";
import type { Entered, EnterMessage } from "./messages.ts";

export type EnterReading = (entry: Omit<EnterMessage, "kind" | "board">) => void;

/** What holds for all that is entered. */
export interface Visit {
  readonly day: string;
  readonly instrument: string;
  readonly withPoints: boolean;
}

/** The rows that are shown, the columns they use, and their cells in the order of the keys. */
export interface Shown {
  readonly rows: readonly Row[];
  readonly columns: readonly GridColumn[];
  readonly order: readonly Place[];
}

export function useShown(grid: Placed<GridView>, { withPoints }: Visit): Shown {
  const rows = useMemo(
    () => grid.rows.filter(({ point }) => withPoints || point === undefined),
    [grid.rows, withPoints],
  );
  const columns = useMemo(() => {
    const used = new Set(rows.flatMap(({ cells }) => cells.map(({ column }) => column)));
    return grid.columns.filter(({ key }) => used.has(key));
  }, [grid.columns, rows]);
  const order = useMemo(() => orderOf(rows), [rows]);
  return { rows, columns, order };
}

interface EntryOptions {
  readonly rows: readonly Row[];
  readonly visit: Visit;
  readonly enter: EnterReading;
  readonly entered: Entered | undefined;
}

/** What is being entered: the state of the grid, and the ways to change it. */
export interface Entry {
  readonly state: GridState;
  change(part: Partial<GridState>): void;
  move(to: Place | undefined): void;
  /** Writes a reading into the schedule unless it is empty, and goes on. */
  commit(place: Place, text: string, to: Place | undefined): void;
  /** Closes the question for a reason: with the reason, or with none where what stands is left. */
  correct(why: string | undefined): void;
  /** What was entered there and the schedule may not show yet, as it was typed. */
  draftOf(place: Place): string | undefined;
}

export function useEntry({ rows, visit: { day, instrument }, enter, entered }: EntryOptions): Entry {
  const [state, setState] = useState(untouched);
  /** On its way into the schedule, as it was typed: the next key does not wait for it. */
  const pending = useRef(new Map<string, string>());

  useEffect(() => {
    if (!entered) return;
    pending.current.delete(idOf(entered));
    setState((before) => answered(before, entered));
  }, [entered]);

  const send = (place: Place, text: string, why?: string): void => {
    const row = rows.find(({ key }) => key === place.row);
    if (!row) return;
    const draft = state.drafts.get(idOf(place));
    pending.current.set(idOf(place), text);
    enter({
      row: place.row,
      column: place.column,
      text,
      day,
      ...(row.point === undefined ? {} : { point: row.point }),
      ...(instrument === "" ? {} : { instrument }),
      ...(draft === undefined ? {} : { draft }),
      ...(why === undefined ? {} : { why }),
    });
  };
  const move = (to: Place | undefined): void => setState((before) => moved(before, to));
  return {
    state,
    move,
    change: (part) => setState((before) => ({ ...before, ...part })),
    draftOf: (place) => pending.current.get(idOf(place)) ?? state.drafts.get(idOf(place)),
    commit: (place, text, to) => {
      if (text.trim() !== "") send(place, text.trim());
      move(to);
    },
    correct: (why) => {
      const { correction } = state;
      if (correction && why !== undefined) send(correction.place, correction.text, why);
      setState(closed);
    },
  };
}

/** Keeps the focus in the cell the keys are in, whatever was drawn anew. Returns the reference of their table. */
export function useFocus({ at, typed, correction }: GridState) {
  const table = useRef<HTMLTableElement>(null);
  useLayoutEffect(() => {
    // Where a reason is asked for, that is where one writes.
    if (!at || correction) return;
    const cell = table.current?.querySelector<HTMLElement>(`[data-cell="${CSS.escape(idOf(at))}"]`);
    const input = cell?.querySelector("input");
    (input ?? cell)?.focus();
  }, [at, correction, typed === undefined]);
  return table;
}
