import type { BoardInPlace } from "../model/installation.ts";

/**
 * Works something out board by board and keeps each answer for as long as the board and its place stay the same, so
 * that what is asked of a whole installation after an edit costs the one board that changed.
 */
export function perBoard<T>(compute: (place: BoardInPlace) => T): (place: BoardInPlace) => T {
  const kept = new WeakMap<BoardInPlace["board"], { readonly context: BoardInPlace["context"]; readonly value: T }>();
  return (place) => {
    const before = kept.get(place.board);
    if (before && before.context === place.context) return before.value;
    const value = compute(place);
    kept.set(place.board, { context: place.context, value });
    return value;
  };
}
