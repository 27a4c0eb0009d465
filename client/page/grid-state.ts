/** What the grid knows between two keys, and what each event makes of it: plain data, so that a component has only to show it. */
import { idOf, type Place } from "./grid-keys.ts";
import type { Entered } from "./messages.ts";

/** A reading that already stands for that day: it is replaced once a reason is given. */
interface Correction {
  readonly place: Place;
  readonly stands: string;
  readonly text: string;
}

export interface GridState {
  /** Where a person went last; nothing before the first key or click. */
  readonly at: Place | undefined;
  /** What is being typed there; nothing while the cell is only shown. */
  readonly typed: string | undefined;
  /** What was entered here a moment ago, as it was typed, by `idOf` of its cell: it may be typed anew. */
  readonly drafts: ReadonlyMap<string, string>;
  readonly correction: Correction | undefined;
  /** Why the last entry was not written; empty where it was. */
  readonly problem: string;
}

export const untouched: GridState = {
  at: undefined,
  typed: undefined,
  drafts: new Map(),
  correction: undefined,
  problem: "",
};

/** Leaves what was being typed. Where there is nowhere to go, the cell stays the same. */
export const moved = (state: GridState, to: Place | undefined): GridState => ({
  ...state,
  typed: undefined,
  at: to ?? state.at,
});

/** What the schedule made of an entry. */
export function answered(state: GridState, { row, column, text, written, stands, problem }: Entered): GridState {
  const place = { row, column };
  if (stands !== undefined) return { ...state, at: place, correction: { place, stands, text } };
  if (problem !== undefined) return { ...state, at: place, typed: text, problem };
  return { ...state, drafts: new Map(state.drafts).set(idOf(place), written ?? text), problem: "" };
}

/** The question for a reason is closed, and its cell is where the keys are again. */
export const closed = (state: GridState): GridState => ({
  ...state,
  at: state.correction?.place ?? state.at,
  correction: undefined,
});
