/** What a conflict is about, in words. */
import type { Conflict } from "./merge.ts";

/** Where a conflict is: `W/3 · live 2027-03-10 · Zs`. */
export function placeOf({ path }: Conflict): string {
  const parts = path.filter((part, index) => index > 0 || !part.startsWith("installation "));
  const [board = "", way = "", ...rest] = parts;
  const name = /^board (\S+)$/.exec(board)?.[1];
  const number = /^way (\S+)$/.exec(way)?.[1];
  if (parts.length === 0) return path.join(" · ");
  if (name !== undefined && number !== undefined) return [`${name}/${number}`, ...rest].join(" · ");
  return (name === undefined ? parts : [name, ...parts.slice(1)]).join(" · ");
}

const longest = 100;

/** What a side has there, in one line. */
export function sideText(text: string): string {
  const lines = text.split(/\r\n|\n|\r/).filter((line) => line.trim() !== "" && !line.trim().startsWith("#"));
  const [first = ""] = lines;
  if (lines.length === 0) return "not there";
  const shown = first.trim().replace(/\s+/g, " ");
  const cut = shown.length > longest ? `${shown.slice(0, longest)}…` : shown;
  return lines.length === 1 ? cut : `${cut} … (${lines.length} lines)`;
}
