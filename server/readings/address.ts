/**
 * The address of what a schedule holds: `A/3 · live 2026-03-05 · Zs`. It follows from what a line says of itself — whose
 * line it is, the day of its tests, its word and what tells two of that word apart — and from nothing round it: not from
 * line numbers, not from order, not from layout. So the same fact has the same address in every version of a schedule.
 *
 * Printed, its parts are divided by ` · `: the place (`file`, `installation`, `A`, `A/3`, of several installations with
 * `installation "Title"` before it), the blocks inside it, the line, and where a line holds several values the one that is
 * meant. `supply` is a block of its installation. Names that are no plain words are in quotes.
 */
import { unitOf } from "../../grammar/units.ts";
import { type BlockKind, openedBy, rowOf } from "../../grammar/vocabulary.ts";

/** Whose line it is. A board is the same whether it is written in its installation or in a file of its own. */
export type AddressPlace =
  | { readonly of: "file" }
  | { readonly of: "installation" }
  | { readonly of: "board"; readonly board: string }
  | { readonly of: "way"; readonly board: string; readonly way: string };

/** A block or a line: its word, and what tells it apart from others of the word. */
export interface AddressStep {
  readonly word: string;
  readonly key: readonly string[];
  /** Of a block of tests that is kept and does not count. */
  readonly struckOut?: true;
}

export interface Address {
  /** The title of its installation, where a file holds several. */
  readonly installation?: string;
  readonly place: AddressPlace;
  /** The blocks it is in, from the place inwards. */
  readonly blocks: readonly AddressStep[];
  /** Missing where the block itself is meant. What a block's first line says of it counts as lines of the block. */
  readonly line?: AddressStep;
  /** Which value of a line that holds several: `L-E`. */
  readonly part?: string;
  /** From 2, where several have the same address otherwise: the second and so on in the order of what they say. */
  readonly nth?: number;
}

export const divider = " · ";
/** What stands where a board's name may stand; a board of such a name is in quotes. */
const isReserved = (name: string): boolean =>
  name === "file" || name === "installation" || rowOf("installation", name) !== undefined;
const struckOut = "struck-out";

export function printAddress({ installation, place, blocks, line, part, nth }: Address): string {
  const inSupply = place.of === "installation" && blocks[0]?.word === "supply";
  const items = [
    ...(installation === undefined ? [] : [`installation ${quoted(installation)}`]),
    ...(inSupply || (installation !== undefined && place.of === "installation") ? [] : [placeText(place)]),
    ...blocks.map(stepText),
    ...(line ? [stepText(line)] : []),
    ...(part === undefined ? [] : [pieceText(part)]),
  ];
  return items.join(divider) + (nth === undefined ? "" : ` #${nth}`);
}

function placeText(place: AddressPlace): string {
  if (place.of === "file" || place.of === "installation") return place.of;
  const board = isReserved(place.board) ? quoted(place.board) : pieceText(place.board);
  return place.of === "board" ? board : `${board}/${pieceText(place.way)}`;
}

function stepText({ word, key, struckOut: out }: AddressStep): string {
  const pieces = key.map((piece, index) => {
    const next = key[index + 1];
    const runsOn = /^[<>]?-?\d/.test(piece) && next !== undefined && unitOf(next) !== undefined;
    return piece === struckOut || runsOn ? quoted(piece) : pieceText(piece);
  });
  return [pieceText(word), ...pieces, ...(out ? [struckOut] : [])].join(" ");
}

const quoted = (text: string): string => `"${text.replace(/["\\]/g, "\\$&").replace(/\n/g, "\\n")}"`;

const amountShape = /^[<>]?-?\d+(?:\.\d+)? (\S+)$/;
const isAmount = (text: string): boolean => unitOf(amountShape.exec(text)?.[1] ?? "") !== undefined;

const pieceText = (text: string): string =>
  (/^[^\s"/·#\\]+$/.test(text) && !text.includes("\ufeff")) || isAmount(text) ? text : quoted(text);

interface Piece {
  readonly text: string;
  readonly quoted: boolean;
}

const token = /"((?:[^"\\]|\\.)*)"|#(\d+)(?=\s*$)|([·/])|([^\s"/·#\\]+)|(\s+)/uy;

/** The address a text prints, or nothing where it is none. */
export function parseAddress(text: string): Address | undefined {
  const read = itemsIn(text.trim());
  if (!read) return undefined;
  const [first, ...rest] = read.items;
  const titled =
    first?.length === 2 && isWord(first[0], "installation") && first[1]?.quoted ? first[1].text : undefined;
  const own = titled === undefined ? read.items : rest;
  const placed = placeIn(own, titled !== undefined);
  const steps = placed && stepsIn(placed.items, kindOf(placed.place));
  if (!steps) return undefined;
  return {
    ...(titled === undefined ? {} : { installation: titled }),
    place: placed.place,
    ...steps,
    ...(read.nth === undefined ? {} : { nth: read.nth }),
  };
}

/** The pieces of each part between two dividers. */
function itemsIn(text: string): { readonly items: Piece[][]; readonly nth?: number } | undefined {
  const items: Piece[][] = [[]];
  let nth: number | undefined;
  let at = 0;
  while (at < text.length) {
    token.lastIndex = at;
    const match = token.exec(text);
    if (!match) return undefined;
    const [whole, inQuotes, count, sign, bare] = match;
    at += whole.length;
    const item = items.at(-1) as Piece[];
    if (count !== undefined) nth = Number(count);
    else if (sign === "·") items.push([]);
    else if (sign === "/") item.push({ text: "/", quoted: false });
    else if (inQuotes !== undefined)
      item.push({ text: inQuotes.replace(/\\(.)/g, (_, one: string) => (one === "n" ? "\n" : one)), quoted: true });
    else if (bare !== undefined) item.push({ text: bare, quoted: false });
  }
  if (items.some((item) => item.length === 0)) return undefined;
  return { items: items.map(withUnits), ...(nth === undefined ? {} : { nth }) };
}

/** A number and its unit are one piece. */
function withUnits(pieces: readonly Piece[]): Piece[] {
  const out: Piece[] = [];
  for (const piece of pieces) {
    const before = out.at(-1);
    const joined = before && !before.quoted && !piece.quoted ? `${before.text} ${piece.text}` : "";
    if (joined !== "" && isAmount(joined)) out[out.length - 1] = { text: joined, quoted: false };
    else out.push(piece);
  }
  return out;
}

const isWord = (piece: Piece | undefined, word: string): boolean => piece?.text === word && !piece.quoted;

interface Placed {
  readonly place: AddressPlace;
  readonly items: readonly Piece[][];
}

/** Whose line it is, and the parts after that. In a named installation its own lines follow without a word for it. */
function placeIn(items: readonly Piece[][], named: boolean): Placed | undefined {
  const [first, ...rest] = items;
  if (!first) return named ? { place: { of: "installation" }, items: [] } : undefined;
  const [name, slash, way, ...more] = first;
  if (isWord(name, "supply")) return { place: { of: "installation" }, items };
  if (!named && first.length === 1 && isWord(name, "file")) return { place: { of: "file" }, items: rest };
  if (!named && first.length === 1 && isWord(name, "installation"))
    return { place: { of: "installation" }, items: rest };
  if (name && isWord(slash, "/") && way && more.length === 0)
    return { place: { of: "way", board: name.text, way: way.text }, items: rest };
  if (named && (first.length > 1 || (name && !name.quoted && isReserved(name.text))))
    return { place: { of: "installation" }, items };
  return first.length === 1 && name ? { place: { of: "board", board: name.text }, items: rest } : undefined;
}

const kindOf = ({ of }: AddressPlace): BlockKind => of;

function stepsIn(items: readonly Piece[][], place: BlockKind): Pick<Address, "blocks" | "line" | "part"> | undefined {
  const blocks: AddressStep[] = [];
  let kind = place;
  let left = items;
  while (left[0]) {
    const step = stepOf(left[0]);
    const opens = openedBy(rowOf(kind, step.word));
    if (opens === undefined) break;
    blocks.push(step);
    kind = opens;
    left = left.slice(1);
  }
  const [line, part, ...more] = left;
  if (more.length > 0 || (part && part.length !== 1)) return undefined;
  return { blocks, ...(line ? { line: stepOf(line) } : {}), ...(part?.[0] ? { part: part[0].text } : {}) };
}

function stepOf(item: readonly Piece[]): AddressStep {
  const [word, ...key] = item;
  const out = key.length > 0 && isWord(key.at(-1), struckOut);
  const pieces = out ? key.slice(0, -1) : key;
  return { word: word?.text ?? "", key: pieces.map(({ text }) => text), ...(out ? { struckOut: true } : {}) };
}
