/** One reading over the years: every day it was taken, when each figure was written, and who changed it from what. */
import type { Names } from "../../model/installation.ts";
import type { Quantity } from "../../model/values.ts";
import type { Address } from "../../readings/address.ts";
import type { Entry } from "../../readings/entries.ts";
import { type Uncertainty, uncertaintyInTest } from "../../readings/uncertainty.ts";
import type { EntryChange } from "../compare/changes.ts";
import { addressBefore } from "../compare/records.ts";

/** One version of a file: a commit, or what is not committed yet. */
export interface Edit {
  /** The short name of the commit; nothing for what is not committed. */
  readonly commit?: string;
  readonly by: string;
  /** The day of it: 2026-03-05. */
  readonly on: string;
  readonly subject: string;
  /** What differs from each version before it, in all of them. */
  readonly changes: readonly EntryChange[];
  /** Boards and ways that took another name: the later one and the earlier. */
  readonly moved: ReadonlyMap<string, string>;
}

export interface Writing {
  readonly edit: Edit;
  readonly kind: EntryChange["kind"];
  readonly from?: string;
  readonly to?: string;
}

export interface Point {
  readonly entry: Entry;
  /** How it was written and rewritten, the first first. */
  readonly writings: readonly Writing[];
  readonly uncertainty?: Uncertainty;
  readonly value?: number;
}

export interface Series {
  /** The reading without its day: `A/3 · Zs`. */
  readonly name: string;
  /** The earliest day first. */
  readonly points: readonly Point[];
  readonly drift?: Drift;
}

export interface Drift {
  readonly by: number;
  /** What both instruments may be out together; nothing where neither states it. */
  readonly uncertainty?: number;
}

const isQuantity = (reading: Entry["reading"]): reading is Quantity => reading !== undefined && "sign" in reading;

/** What tells a reading from others on any day: its place, word, key and part. */
const slotOf = ({ place, line, part }: Address): string => {
  const where = place.of === "way" ? `${place.board}/${place.way}` : place.of === "board" ? place.board : place.of;
  return [where, [line?.word, ...(line?.key ?? [])].join(" "), part].filter((one) => one !== undefined).join(" · ");
};

/** The series of the entries that are wanted. `edits` are the latest first. */
export function seriesOf(
  entries: readonly Entry[],
  wanted: (entry: Entry) => boolean,
  edits: readonly Edit[],
  names: Names | undefined,
): Series[] {
  const chosen = pairByPair(entries.filter(({ reading }) => reading !== undefined)).filter(wanted);
  return [...Map.groupBy(chosen, ({ address }) => slotOf(address))].map(([name, group]) => {
    const days = group.toSorted((a, b) => ((a.on ?? "") < (b.on ?? "") ? -1 : 1));
    const points = days.map((entry) => pointOf(entry, edits, names));
    const drift = driftOf(points);
    return { name, points, ...(drift ? { drift } : {}) };
  });
}

/** The pairs of a circuit with one line conductor. */
const usualPairs = ["L-N", "L-E", "N-E"];

/** What was read of each pair alike in one year is beside what was read pair by pair in another. */
function pairByPair(entries: readonly Entry[]): Entry[] {
  const base = ({ address }: Entry): string => slotOf({ ...address, part: "" });
  const named = Map.groupBy(
    entries.filter(({ address: { part } }) => part !== undefined && part !== "each"),
    base,
  );
  return entries.flatMap((entry) => {
    const others = entry.address.part === "each" ? (named.get(base(entry)) ?? []) : [];
    const parts = new Set(others.map(({ address }) => address.part ?? ""));
    if (parts.size === 0) return [entry];
    if (usualPairs.some((pair) => parts.has(pair))) for (const pair of usualPairs) parts.add(pair);
    return [...parts].map((part) => ({ ...entry, address: { ...entry.address, part } }));
  });
}

function pointOf(entry: Entry, edits: readonly Edit[], names: Names | undefined): Point {
  const { reading, fact, kind, on } = entry;
  const uncertainty =
    names && isQuantity(reading) && on !== undefined
      ? uncertaintyInTest(names, { with: entry.with ?? [], facts: { kind } }, fact, reading)
      : undefined;
  return {
    entry,
    writings: writingsOf(entry, edits),
    ...(uncertainty ? { uncertainty } : {}),
    ...(isQuantity(reading) && reading.sign === "=" ? { value: reading.value } : {}),
  };
}

/**
 * From the present back to the first writing; the address is followed through renumbering, and through another day of
 * its tests. A commit of another branch, which wrote something else there, is passed over.
 */
function writingsOf(entry: Entry, edits: readonly Edit[]): Writing[] {
  const writings: Writing[] = [];
  let { at } = entry;
  // What is recorded there, going back; nothing before it was written, or written again.
  let meaning: string | undefined = entry.meaning;
  for (const edit of edits) {
    const change = edit.changes.find(({ old, now }) =>
      meaning === undefined ? !now && old?.at === at : now?.at === at && now.meaning === meaning,
    );
    const block = change ? undefined : edit.changes.find((one) => isOfItsBlock(one, at));
    if (change) {
      const { kind, old, now } = change;
      writings.push({ edit, kind, ...(old ? { from: old.shown } : {}), ...(now ? { to: now.shown } : {}) });
      at = old?.at ?? at;
      meaning = old?.meaning;
    } else if (block?.old && block.now) {
      writings.push({ edit, kind: block.kind, from: block.old.line, to: block.now.line });
      at = block.old.at + at.slice(block.now.at.length);
    } else at = addressBefore(at, edit.moved);
  }
  return writings.reverse();
}

/** Whether the tests that hold an address took another day, were struck out or count again. */
const isOfItsBlock = ({ old, now }: EntryChange, at: string): boolean =>
  old !== undefined && now !== undefined && !now.reading && !now.address.line && at.startsWith(`${now.at} · `);

/** From the first exact figure to the last: only what is measured alike is compared. */
function driftOf(points: readonly Point[]): Drift | undefined {
  const exact = points.filter(({ value, entry }) => value !== undefined && entry.fact.provenance === "measured");
  const [first, last] = [exact[0], exact.at(-1)];
  if (!first || !last || first === last || first.value === undefined || last.value === undefined) return undefined;
  const both = [first.uncertainty?.value, last.uncertainty?.value].filter((one) => one !== undefined);
  const uncertainty = both.reduce((sum, one) => sum + one, 0);
  return { by: last.value - first.value, ...(both.length > 0 ? { uncertainty } : {}) };
}

/** Whether a reading is one that an address means: with its day or without, the whole line or one value of it. */
export function isMeant({ address, on }: Entry, wanted: Address): boolean {
  const { place, line, part, blocks } = wanted;
  const samePlace =
    JSON.stringify(place) === JSON.stringify(address.place) ||
    (place.of === "board" && address.place.of === "way" && place.board === address.place.board && !line);
  if (!samePlace) return false;
  const day = blocks.flatMap(({ key }) => key).find((one) => /^\d{4}-\d{2}-\d{2}$/.test(one));
  if (day !== undefined && on !== day) return false;
  if (!line) return true;
  if (line.word !== address.line?.word && !(part === undefined && line.word === address.part)) return false;
  return (part === undefined || part === address.part) && line.key.every((one) => address.line?.key.includes(one));
}
