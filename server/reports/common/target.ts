/** Which way or board a person means by `A/3` or `A`. */
import type { Way } from "../../model/file.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { listed } from "../../text/words.ts";

/** A way, a whole board, or without both the installation. */
export interface Target {
  readonly place?: BoardInPlace;
  readonly way?: Way;
}

interface WayRef extends Target {
  readonly installation: Installation;
}

type ResolvedRef = WayRef | { readonly failure: string };

export const none = {
  failure: "There is no installation in this file, so there is nothing to judge its circuits by.",
} as const;

/** The first board of a name counts, and its first way of an id, as a reference would find them. */
export function targetIn(
  installations: readonly Installation[],
  named: { readonly way?: string; readonly board?: string },
): ResolvedRef {
  const [first] = installations;
  if (!first) return none;
  if (named.way === undefined && named.board === undefined) return { installation: first };
  const [before, ...rest] = named.way?.split("/") ?? [];
  const boardName = named.board ?? before ?? "";
  const id = named.way !== undefined && rest.length === 0 && named.board !== undefined ? named.way : rest.join("/");
  for (const installation of installations) {
    const place = installation.boards.find(({ board }) => board.head.name === boardName);
    if (!place) continue;
    if (named.way === undefined) return { installation, place };
    const way = place.board.ways.find((one) => one.id === id);
    if (way) return { installation, place, way };
    if (id === "")
      return { failure: `“${named.way}” does not name a way: write its board as well, as in ${boardName}/1.` };
    return { failure: `Board ${boardName} has no way ${id}: it has ${known(place.board.ways.map((one) => one.id))}.` };
  }
  const names = installations.flatMap(({ boards }) => boards.map(({ board }) => board.head.name));
  const whole =
    named.way !== undefined && rest.length === 0
      ? ` A way is named with its board, as in ${names[0] ?? "A"}/${named.way}.`
      : "";
  return {
    failure: `There is no board “${boardName}”: there ${names.length === 1 ? "is" : "are"} ${known(names)}.${whole}`,
  };
}

const known = (names: readonly string[]): string => listed(names) || "none";
