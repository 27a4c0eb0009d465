/** Which way or board a person means by `A/3` or `A`, and its worksheet. */
import type { Installation } from "../model/installation.ts";
import type { Report } from "./document.ts";
import { worksheet } from "./worksheet.ts";

export type Sheet = { readonly report: Report } | { readonly failure: string };

/** The worksheet of what is named, or of the first installation with all its boards. */
export function worksheetOf(installations: readonly Installation[], named?: string): Sheet {
  const [first] = installations;
  if (!first)
    return { failure: "There is no installation in this file: a worksheet needs its supply and its edition." };
  if (named === undefined) return { report: worksheet(first) };
  const [boardName = "", ...rest] = named.split("/");
  const id = rest.join("/");
  for (const installation of installations) {
    const board = installation.boards.find((one) => one.board.head.name === boardName);
    if (!board) continue;
    if (id === "") return { report: worksheet(installation, { board }) };
    const way = board.board.ways.find((one) => one.id === id);
    if (way) return { report: worksheet(installation, { board, way }) };
    return { failure: `Board ${boardName} has no way ${id}: it has ${listed(board.board.ways.map((one) => one.id))}.` };
  }
  const names = installations.flatMap(({ boards }) => boards.map(({ board }) => board.head.name));
  return { failure: `There is no board “${boardName}”: there ${names.length === 1 ? "is" : "are"} ${listed(names)}.` };
}

const listed = (names: readonly string[]): string =>
  names.length === 0
    ? "none"
    : names.length === 1
      ? (names[0] ?? "")
      : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
