/**
 * Three versions of a schedule as one, by what their lines say. What only one side changed is taken from it; what both
 * changed alike is taken once; anything else is a conflict of that one line or block. Lines are taken over as they are
 * written, never written anew.
 */
import { type BlockKind, vocabulary } from "../../grammar/vocabulary.ts";
import { addsUp } from "./audit.ts";
import { type Body, bare, type Item, isSame, isSameBelow, saysSame } from "./item.ts";
import { isTests } from "./key.ts";
import { neatened } from "./neat.ts";
import { orderOf, type Slot } from "./order.ts";
import { type Group, groupsOf, type Side } from "./pair.ts";
import { isSameSense } from "./sense.ts";
import { evened, type Texts } from "./texts.ts";
import { inTheirOrder, together } from "./together.ts";
import { Memo, treeOf } from "./tree.ts";
import { laidOut, leadOf, opened, textsOf, written } from "./written.ts";

/** What each side says of one thing, in whole lines; empty where it says nothing. */
export interface Conflict {
  /** Where it is, from the outermost block inwards. */
  readonly path: readonly string[];
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

export type Piece = string | Conflict;

export interface Merged {
  readonly pieces: readonly Piece[];
  readonly conflicts: readonly Conflict[];
  /** What ends a line of the result. */
  readonly lineEnd: string;
  /** Whether the last line has a line end. */
  readonly closed: boolean;
  readonly bom: boolean;
}

type Outcome = Merged | { readonly unreadable: string };

export const isMerged = (outcome: Outcome): outcome is Merged => "pieces" in outcome;

/** `newest`: the version of the language that is known. */
export function merge(texts: Texts, newest = 1): Outcome {
  const { base, ours, theirs, ...ends } = evened(texts);
  const memo = new Memo();
  const trees = { base: treeOf(base, memo), ours: treeOf(ours, memo), theirs: treeOf(theirs, memo) };
  if ("unreadable" in trees.base) return unreadableIn("common", trees.base);
  if ("unreadable" in trees.ours) return unreadableIn("our", trees.ours);
  if ("unreadable" in trees.theirs) return unreadableIn("their", trees.theirs);
  const bodies = { base: trees.base, ours: trees.ours, theirs: trees.theirs };
  if (Object.values(bodies).some(({ body }) => versionOf(body) > newest))
    return { unreadable: "it is in a newer version of the language" };
  const merger = new Merger();
  const pieces = merger.body(bodies.base.body, bodies.ours.body, bodies.theirs.body, []);
  const conflicts = pieces.filter((piece) => typeof piece !== "string");
  const views = { ours: viewOf(pieces, "ours"), theirs: viewOf(pieces, "theirs") };
  if (!addsUp(bodies, { ours: treeOf(views.ours, memo), theirs: treeOf(views.theirs, memo) }))
    return { unreadable: "the result would lose or double a line" };
  const neat = conflicts.length === 0 ? neatened(views.ours, ours, theirs) : undefined;
  return { pieces: neat === undefined ? pieces : [neat], conflicts, ...ends };
}

const versionOf = ({ items }: Body): number => Number(items.find(({ word }) => word === "wayfile")?.says ?? 0);

const unreadableIn = (
  version: "common" | "our" | "their",
  { unreadable }: { readonly unreadable: string },
): Outcome => ({
  unreadable: `in ${version === "common" ? "the common" : version} version ${unreadable}`,
});

/** The text with one side's lines in place of each conflict. */
export const viewOf = (pieces: readonly Piece[], side: "base" | "ours" | "theirs"): string =>
  pieces.map((piece) => (typeof piece === "string" ? piece : piece[side])).join("");

type Path = readonly string[];

/** What stands at one place of the result. */
interface Placed {
  readonly slot: Slot;
  /** What it was taken from: the first of them where it is a conflict. */
  readonly item: Item;
  readonly pieces: readonly Piece[];
}

class Merger {
  body(base: Body | undefined, ours: Body, theirs: Body, path: Path): Piece[] {
    const { kind } = ours;
    const versions = { base: base?.items ?? [], ours: ours.items, theirs: theirs.items };
    const groups = inTheirOrder(together(groupsOf(versions)), versions);
    const placed = groups.map((group, index) => this.#group(group, `${index}`, path, kind));
    const pieces = new Map(placed.flat().map((one) => [one.slot.id, one.pieces]));
    const slots = (side: Side): Slot[] => slotsOf(side, versions[side], groups, placed);
    const order = orderOf(slots("base"), slots("ours"), slots("theirs"));
    return [...order.flatMap(({ id }) => pieces.get(id) ?? []), ...leadOf(base?.tail ?? [], ours.tail, theirs.tail)];
  }

  #group(group: Group, id: string, path: Path, kind: BlockKind): Placed[] {
    const { base, ours, theirs } = group;
    const all = (items: readonly Item[]): Placed[] =>
      items.map((item, index) => ({
        slot: slotOf(item, `${id}.${index}`, kind),
        item,
        pieces: [...item.lead, ...written(item)],
      }));
    const isOne = !group.several && base.length <= 1 && ours.length <= 1 && theirs.length <= 1;
    if (isOne) return this.#single(group, id, path, kind);
    if (saysSame(ours, base)) return all(theirs);
    if (saysSame(theirs, base) || saysSame(ours, theirs)) return all(ours);
    const [first = theirs[0] as Item] = ours;
    return [
      { slot: slotOf(first, `${id}.0`, kind), item: first, pieces: [conflictOf(group, [...path, namesOf(group)])] },
    ];
  }

  #single({ base: [base], ours: [ours], theirs: [theirs] }: Group, id: string, path: Path, kind: BlockKind): Placed[] {
    const at = (item: Item, pieces: readonly Piece[]): Placed[] => [
      { slot: slotOf(item, `${id}.0`, kind), item, pieces },
    ];
    if (ours && theirs) {
      const here = [...path, ours.name];
      return at(ours, [...leadOf(base?.lead ?? [], ours.lead, theirs.lead), ...this.#both(base, ours, theirs, here)]);
    }
    const [only] = [ours ?? theirs].filter((item) => item !== undefined);
    if (!only) return [];
    // Removed by one side: that is right as long as the other left it as it was.
    if (base && isSame(base, only)) return [];
    if (!base) return at(only, [...only.lead, ...written(only)]);
    const group = { base: [base], ours: ours ? [ours] : [], theirs: theirs ? [theirs] : [] };
    return at(only, [conflictOf(group, [...path, only.name])]);
  }

  /** What both sides have. The lines above it are dealt with already. */
  #both(base: Item | undefined, ours: Item, theirs: Item, path: Path): Piece[] {
    const changed = { ours: !base || !isSameBelow(ours, base), theirs: !base || !isSameBelow(theirs, base) };
    if (base && !changed.ours) return written(changed.theirs ? theirs : laidOut(base, ours, theirs));
    if (!changed.theirs || isSameBelow(ours, theirs)) return written(ours);
    if (ours.body && theirs.body && !isAnother(base, ours, theirs)) return this.#blocks(base, ours, theirs, path);
    const kept = sameAmounts(base, ours, theirs);
    return kept ? written(kept) : [conflictOf(withoutLead(base, ours, theirs), path)];
  }

  #blocks(base: Item | undefined, one: Item, other: Item, path: Path): Piece[] {
    const was = base && opened(base);
    const ours = opened(one);
    const theirs = opened(other);
    if (!ours.body || !theirs.body) return [];
    // Where the base had no block yet, its line is not the opening line of one.
    const heads = was && !was.body ? undefined : was;
    if (was && !was.body && ours.spelt !== theirs.spelt) return [conflictOf(withoutLead(base, one, other), path)];
    return [
      ...headPieces(heads, ours, theirs, path),
      ...this.body(was?.body, ours.body, theirs.body, path),
      closeOf(was?.body, ours.body, theirs.body),
    ];
  }
}

function headPieces(base: Item | undefined, ours: Item, theirs: Item, path: Path): Piece[] {
  if (ours.spelt === theirs.spelt) return [ours.head === base?.head ? theirs.head : ours.head];
  if (base && ours.spelt === base.spelt) return [theirs.head];
  if (base && theirs.spelt === base.spelt) return [ours.head];
  return [{ path, base: base?.head ?? "", ours: ours.head, theirs: theirs.head }];
}

const closeOf = (base: Body | undefined, ours: Body, theirs: Body): string =>
  ours.close === base?.close ? theirs.close : ours.close;

/** Where all three differ in the letter, but two of them in nothing but the unit. */
function sameAmounts(base: Item | undefined, ours: Item, theirs: Item): Item | undefined {
  if (ours.body || theirs.body) return undefined;
  const [here, there] = [isSameSense(ours.sense, base?.sense), isSameSense(theirs.sense, base?.sense)];
  if (here !== there) return here ? theirs : ours;
  return isSameSense(ours.sense, theirs.sense) ? ours : undefined;
}

const conflictOf = ({ base, ours, theirs }: Group, path: Path): Conflict => ({
  path,
  base: textsOf(base),
  ours: textsOf(ours),
  theirs: textsOf(theirs),
});

const withoutLead = (base: Item | undefined, ours: Item, theirs: Item): Group => ({
  base: base ? [{ ...base, lead: [] }] : [],
  ours: [{ ...ours, lead: [] }],
  theirs: [{ ...theirs, lead: [] }],
});

const namesOf = ({ base, ours, theirs }: Group): string =>
  [...new Set([...ours, ...theirs, ...base].map(({ name }) => name))].join(", ");

/**
 * The places of the result in the order of one version. What is the same to the letter is one object in all versions,
 * and may stand in one of them more than once: so places are counted, not looked up. Each place is reached from the side
 * it was taken from, a conflict from either.
 */
function slotsOf(
  side: Side,
  items: readonly Item[],
  groups: readonly Group[],
  placed: readonly (readonly Placed[])[],
): Slot[] {
  const found = new Map<Item, (Slot | undefined)[]>();
  for (const [index, group] of groups.entries())
    for (const [nth, item] of group[side].entries()) {
      const before = found.get(item) ?? [];
      const there = placed[index] ?? [];
      const place = there.filter((one) => one.item === item)[before.length] ?? there[nth];
      found.set(item, [...before, place?.slot]);
    }
  const next = new Map<Item, number>();
  const slots = items.flatMap((item) => {
    const nth = next.get(item) ?? 0;
    next.set(item, nth + 1);
    return found.get(item)?.[nth] ?? [];
  });
  return [...new Set(slots)];
}

/** By word in the order of the language, then by number or day. */
function slotOf({ word, key, row }: Item, id: string, kind: BlockKind): Slot {
  const words = Object.keys(vocabulary[kind]);
  const isTest = isTests(row);
  const place = isTest ? words.indexOf("dead") : words.indexOf(word);
  return { id, rank: [place, ...(isTest ? key.split(" ").slice(1, 2) : []), ...piecesOf(key)] };
}

/** Numbers in a name count as numbers: way 9 stands before way 10. */
const piecesOf = (key: string): (string | number)[] =>
  (key.match(/\d+|\D+/g) ?? []).map((piece) => (/^\d/.test(piece) ? Number(piece) : piece));

/**
 * Whether a number may have been given to another circuit by one side while the other tested the one it had: a new title
 * and another device or cable, and tests that the other side changed.
 */
function isAnother(base: Item | undefined, ours: Item, theirs: Item): boolean {
  if (!base?.body || ours.row?.opens !== "way") return false;
  const built = (item: Item) => partsOf(item, ({ row }) => row?.figures === "device" || row?.figures === "cable");
  const tested = (item: Item) => partsOf(item, ({ row }) => isTests(row));
  const became = (item: Item) => item.title !== base.title && built(item) !== built(base);
  return (became(ours) && tested(theirs) !== tested(base)) || (became(theirs) && tested(ours) !== tested(base));
}

const partsOf = ({ body }: Item, wanted: (item: Item) => boolean): string =>
  (body?.items ?? []).filter(wanted).map(bare).join("");
