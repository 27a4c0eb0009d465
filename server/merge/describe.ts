/** What a conflict is about, in words. */
import { type AddressPlace, divider, printAddress } from "../readings/address.ts";
import type { Conflict } from "./merge.ts";

/** Where a conflict is, as its address is printed everywhere: `W/3 · live 2027-03-10 · Zs`. */
export function placeOf({ path }: Conflict): string {
  const [first, ...inner] = path;
  const within = first?.startsWith("installation ") ?? false;
  const parts = within ? inner : path;
  const board = named("board", parts[0]);
  const way = board === undefined ? undefined : named("way", parts[1]);
  const place = addressPlace(board, way, within);
  const rest = parts.slice([board, way].filter((one) => one !== undefined).length);
  // The supply is its own place.
  if (place.of === "installation" && rest[0] === "supply") return rest.join(divider);
  return [printAddress({ place, blocks: [] }), ...rest].join(divider);
}

const named = (word: string, part = ""): string | undefined =>
  part.startsWith(`${word} `) ? part.slice(word.length + 1) : undefined;

function addressPlace(board: string | undefined, way: string | undefined, within: boolean): AddressPlace {
  if (board === undefined) return { of: within ? "installation" : "file" };
  return way === undefined ? { of: "board", board } : { of: "way", board, way };
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
