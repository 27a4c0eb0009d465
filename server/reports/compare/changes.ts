/** What differs between two versions of one block, entry by entry. */
import { rowOf } from "../../../grammar/vocabulary.ts";
import { isAbsent } from "../../model/values.ts";
import { type Address, type AddressStep, printAddress } from "../../readings/address.ts";
import type { Entry } from "../../readings/entries.ts";

/**
 * `altered`, `vanished`, `re-dated`: what happened to a reading that was recorded. `corrected`: it says what stood there
 * before. `struck-out`: it is kept and does not count, `reinstated`: it counts again. `read`: a reading that came. The others are of lines that are
 * stated; `limit`: the line is the same, what it is compared with is not.
 */
export const changeKinds = [
  "altered",
  "vanished",
  "re-dated",
  "struck-out",
  "reinstated",
  "corrected",
  "read",
  "changed",
  "came",
  "went",
  "limit",
] as const;
export type ChangeKind = (typeof changeKinds)[number];

export type EntryChange = { readonly kind: ChangeKind } & (
  | { readonly old: Entry; readonly now: Entry }
  | { readonly old: Entry; readonly now?: undefined }
  | { readonly old?: undefined; readonly now: Entry }
);

/** Entries of one block of both versions, each with what its addresses begin with. */
export function changesOf(before: readonly Entry[], after: readonly Entry[]): EntryChange[] {
  const moved = movedBlocks(before, after);
  const old = Map.groupBy(before, (entry) => keyOf(entry, moved));
  const now = Map.groupBy(after, (entry) => keyOf(entry, none));
  const whole = new Set([...blocksOnlyIn(before, now, moved), ...blocksOnlyIn(after, old, none)]);
  const changes: EntryChange[] = [];
  const gone: Entry[] = [];
  const fresh: Entry[] = [];
  for (const key of new Set([...old.keys(), ...now.keys()])) {
    const [olds, nows] = withoutEqual(old.get(key) ?? [], now.get(key) ?? []);
    for (const [index, entry] of olds.entries()) {
      const other = nows[index];
      if (other) changes.push(changeOf(entry, other));
      else gone.push(entry);
    }
    fresh.push(...nows.slice(olds.length));
  }
  return [...moved.changes, ...changes, ...leftOver(gone, fresh, whole)];
}

/** An address without its place, so that a way is compared with itself under another number. */
function keyOf({ address }: Entry, { blocks: moved }: Moved): string {
  const { blocks, line, part } = address;
  const steps = blocks.map((step) => moved.get(stepKey(step)) ?? step);
  return printAddress({ place: { of: "file" }, blocks: steps, ...(line ? { line } : {}), ...(part ? { part } : {}) });
}

const stepKey = ({ word, key, struckOut }: AddressStep): string => [word, ...key, struckOut ? "out" : ""].join("\0");

/** Those of one address that say the same are no change, in whichever order they are. */
function withoutEqual(olds: readonly Entry[], nows: readonly Entry[]): [Entry[], Entry[]] {
  const left = [...nows];
  const gone = olds.filter((old) => {
    const at = left.findIndex(({ meaning }) => meaning === old.meaning);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
  return [gone, left];
}

/** A figure that was measured, or the reason why it was not, is a record; one that was calculated or declared is a line. */
export const isRecord = ({ reading, on, fact }: Entry): boolean =>
  reading !== undefined && (on !== undefined || fact.provenance === "measured");

function changeOf(old: Entry, now: Entry): EntryChange {
  if (!isRecord(old)) return { kind: isRecord(now) ? "read" : "changed", old, now };
  const kept = now.fact.corrections?.some(({ was }) => same(was, old)) ?? false;
  return { kind: kept ? "corrected" : "altered", old, now };
}

/** Whether a correction names what was recorded before. */
const same = (was: string, { shown, reading }: Entry): boolean =>
  tight(shown).startsWith(tight(was)) || (reading !== undefined && isAbsent(reading) && tight(was) === reading.absent);

const tight = (text: string): string => text.replace(/\s+/g, "");

interface Moved {
  /** Blocks of tests by the step they have in the later version. */
  readonly blocks: ReadonlyMap<string, AddressStep>;
  readonly changes: readonly EntryChange[];
}

const none: Moved = { blocks: new Map(), changes: [] };

/** Blocks of tests that hold the same readings under another date, or that were struck out. */
function movedBlocks(before: readonly Entry[], after: readonly Entry[]): Moved {
  const [olds, nows] = [testsIn(before), testsIn(after)];
  const blocks = new Map<string, AddressStep>();
  const changes: EntryChange[] = [];
  const taken = new Set<string>();
  for (const [key, old] of olds) {
    if (nows.has(key)) continue;
    const match = [...nows].find(([other, now]) => !olds.has(other) && !taken.has(other) && isSameTest(old, now));
    if (!match) continue;
    const [other, now] = match;
    taken.add(other);
    blocks.set(key, now.step);
    changes.push({ kind: kindOfMove(old, now), old: old.header, now: now.header });
  }
  return { blocks, changes };
}

function kindOfMove(old: Tests, now: Tests): ChangeKind {
  if (old.step.struckOut === now.step.struckOut) return "re-dated";
  return now.step.struckOut ? "struck-out" : "reinstated";
}

interface Tests {
  readonly step: AddressStep;
  readonly header: Entry;
  readonly said: ReadonlySet<string>;
}

function testsIn(entries: readonly Entry[]): Map<string, Tests> {
  const found = new Map<string, Tests>();
  const groups = Map.groupBy(
    entries.filter(({ on }) => on !== undefined),
    ({ address }) => stepKey(address.blocks.at(-1) as AddressStep),
  );
  for (const [key, group] of groups) {
    const header = group.find(({ address }) => !address.line);
    const step = header?.address.blocks.at(-1);
    const said = group.filter(({ reading }) => reading).map((entry) => `${nameIn(entry.address)} ${entry.meaning}`);
    if (header && step) found.set(key, { step, header, said: new Set(said) });
  }
  return found;
}

const nameIn = ({ line, part }: Address): string => [line?.word, ...(line?.key ?? []), part].join("\0");

/** The same day struck out; or most of the same readings, and more than one, under another day. */
function isSameTest(old: Tests, now: Tests): boolean {
  if (old.step.word !== now.step.word) return false;
  const sameDay = old.header.on === now.header.on && old.step.struckOut !== now.step.struckOut;
  const common = [...old.said].filter((one) => now.said.has(one)).length;
  return sameDay || (common >= 2 && common * 2 > Math.max(old.said.size, now.said.size));
}

/** Blocks that are in one version only: what their first line says, and all but their readings, goes without saying. */
function* blocksOnlyIn(
  entries: readonly Entry[],
  others: ReadonlyMap<string, readonly Entry[]>,
  moved: Moved,
): Generator<string> {
  for (const entry of entries)
    if (!entry.address.line && entry.address.blocks.length > 0 && !others.has(keyOf(entry, moved)))
      yield blockKey(entry);
}

const blockKey = ({ address: { blocks } }: Entry): string => blocks.map(stepKey).join("\u0001");

function leftOver(gone: readonly Entry[], fresh: readonly Entry[], whole: ReadonlySet<string>): EntryChange[] {
  const shown = (entries: readonly Entry[]) => entries.filter((entry) => isShown(entry, entries, whole));
  const [olds, nows] = [shown(gone), shown(fresh)];
  const changes: EntryChange[] = [];
  const paired = new Set<Entry>();
  // One line of a word that went and one that came are one that changed, unless they are readings: these have keys.
  const slot = (entry: Entry) => `${blockKey(entry)}\u0001${entry.address.line?.word}\u0001${entry.address.part ?? ""}`;
  const byWord = Map.groupBy(nows, slot);
  for (const [word, group] of Map.groupBy(olds, slot)) {
    const [old, now] = [group[0], byWord.get(word)?.[0]];
    const alone = group.length === 1 && byWord.get(word)?.length === 1;
    if (!alone || !old || !now || !old.address.line || old.reading || now.reading) continue;
    paired.add(old).add(now);
    // An answer whose question was worded anew says what it said.
    if (old.meaning !== now.meaning || old.line !== now.line) changes.push({ kind: "changed", old, now });
  }
  for (const old of olds) if (!paired.has(old)) changes.push({ kind: isRecord(old) ? "vanished" : "went", old });
  for (const now of nows) if (!paired.has(now)) changes.push({ kind: isRecord(now) ? "read" : "came", now });
  return changes;
}

const outlines = ({ kind, address: { line } }: Entry): boolean => rowOf(kind, line?.word ?? "")?.outlines === true;

/** A result that asks for nothing. */
const isClear = ({ shown }: Entry): boolean => /^(?:ok|N\/A)(?:\s|$)/.test(shown);

/** Of a block that came or went whole: what it comes to where its words say so; else its readings, and where it has none, that it did. */
function isShown(entry: Entry, among: readonly Entry[], whole: ReadonlySet<string>): boolean {
  const key = blockKey(entry);
  if (!whole.has(key)) return true;
  if (among.some((other) => blockKey(other) === key && outlines(other)))
    return outlines(entry) || (entry.reading !== undefined && !isClear(entry));
  if (entry.reading) return true;
  if (entry.address.line) return rowOf(entry.kind, entry.address.line.word)?.remark === true;
  return !among.some((other) => other.reading && blockKey(other).startsWith(key));
}
