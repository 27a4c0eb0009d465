/** Readings beside those of the other version: what was read last before one, and whose limit moved. */
import type { Entry } from "../../readings/entries.ts";
import { type Change, judgedChange } from "./change.ts";
import type { Placed } from "./findings.ts";
import type { Limits } from "./limits.ts";

/** One side of a place: what it holds, what is found there, and what its readings are compared with. */
export interface Part {
  readonly entries: readonly Entry[];
  readonly found: readonly Placed[];
  readonly limits: () => Limits;
}

/** The latest readings that are as they were, while what they are compared with is not. */
export function movedLimits(before: Part, after: Part, was: Limits, is: Limits): Change[] {
  const olds = new Map(before.entries.map((entry) => [tailOf(entry), entry]));
  return after.entries.flatMap((now): Change[] => {
    const old = olds.get(tailOf(now));
    if (!now.reading || !old || old.meaning !== now.meaning || !isLatest(now, after.entries)) return [];
    const [before, after_] = [was(old), is(now)];
    if (!before || !after_ || before.limit === after_.limit) return [];
    return [judgedChange({ kind: "limit", old, now }, was, is)];
  });
}

/** What was read last before a reading, of the same thing. */
export function lastBefore(now: Entry, entries: readonly Entry[]): Pick<Change, "last"> {
  const [last] = entries
    .filter((old) => old.reading && isSameTest(old, now) && (old.on ?? "") < (now.on ?? ""))
    .toSorted((a, b) => (b.on ?? "").localeCompare(a.on ?? ""));
  return last?.on === undefined ? {} : { last: { text: last.shown, on: last.on } };
}

const isLatest = (entry: Entry, entries: readonly Entry[]): boolean =>
  !entries.some((other) => (other.on ?? "") > (entry.on ?? "") && isSameTest(other, entry));

const isSameTest = ({ address: one }: Entry, { address: other }: Entry): boolean =>
  one.line?.word === other.line?.word && one.part === other.part && one.line?.key.join() === other.line?.key.join();

/** An address without its place. */
const tailOf = ({ at, address }: Entry): string => {
  const first = at.indexOf(" · ");
  return address.place.of === "way" || address.place.of === "board" ? (first < 0 ? "" : at.slice(first)) : at;
};
