/** Where a way is: what its own line says, and what its board says of all its ways. */
import type { Fact, FactOf, Facts } from "../model/values.ts";

export interface WayPlaces {
  readonly names: ReadonlySet<string>;
  /** The line that names a place: the way's own, or the board's. */
  lineOf(name: string): Fact | undefined;
}

/** Words that say how a place is used; they add to the place of the board and do not stand instead of it. */
const additions: readonly string[] = ["outdoors", "indoors", "public", "skilled-only"];

const namesIn = (fact: FactOf<"way", "place"> | FactOf<"board", "place"> | undefined): readonly string[] =>
  (fact?.args.places ?? []).map((place) => place.value);

/** Of most ways nothing is said. */
const nowhere: WayPlaces = { names: new Set(), lineOf: () => undefined };

/** The nearest counts. A line that is half typed may say anything, so nothing is taken from the board then. */
export function specialLocationsOf(way: Facts<"way">, board: Facts<"board">): WayPlaces {
  const own = way.one("place");
  const written = namesIn(own);
  const stands = written.some((name) => !additions.includes(name)) || way.isUnread("place");
  const shared = stands ? undefined : board.one("place");
  const inherited = namesIn(shared);
  if (written.length === 0 && inherited.length === 0) return nowhere;
  return {
    names: new Set([...written, ...inherited].filter((name) => name !== "ordinary")),
    lineOf: (name) => (written.includes(name) ? own : inherited.includes(name) ? shared : undefined),
  };
}
