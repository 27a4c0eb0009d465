/** Which recorded readings were signed for, and which of those say something else since. */
import { wordAt } from "../../model/fact-values.ts";
import type { FileModel, Way } from "../../model/file.ts";
import type { Fact, Facts } from "../../model/values.ts";
import type { Entry } from "../../readings/entries.ts";
import { type EntryChange, isRecord } from "../compare/changes.ts";
import { boardsIn } from "../compare/records.ts";

export interface Signature {
  readonly by: string;
  readonly on: string;
}

/** What is asked of a file, or of the files of an installation together. */
export type Recorded = Pick<FileModel, "installations" | "boards">;

/** Whoever signed for the tests of an installation; of a board in a file of its own, in the file that uses it. */
export function signaturesIn({ installations }: Recorded): readonly Signature[] {
  return installations.flatMap(({ head }) => [
    ...signaturesOf(head.facts),
    ...head.facts.list.flatMap(({ word, inner }) => (word === "inspection" && inner ? signaturesOf(inner) : [])),
  ]);
}

const signaturesOf = ({ list }: Pick<Facts, "list">): Signature[] =>
  list.flatMap((fact) => {
    const [by, on] = [wordAt(fact, "by"), wordAt(fact, "on")];
    return fact.word === "tested" && by !== undefined && on !== undefined ? [{ by, on }] : [];
  });

/**
 * Who signed for a reading in one version of its file: the nearest signature of its day or later, and of one without a
 * day the last. `above` are those of the file that uses this one.
 */
export function signatureFor(entry: Entry, model: Recorded, above: readonly Signature[] = []): Signature | undefined {
  const { on, address } = entry;
  const isRecorded = isRecord(entry) || (on !== undefined && isOfItself(entry));
  if (!isRecorded || address.blocks.some(({ struckOut }) => struckOut)) return undefined;
  const { place } = address;
  const board =
    place.of === "way" || place.of === "board"
      ? boardsIn(model).find((one) => one.head.name === place.board)
      : undefined;
  const way: Way | undefined = place.of === "way" ? board?.ways.find(({ id }) => id === place.way) : undefined;
  const levels = [
    way ? signaturesOf(way.facts) : [],
    board ? signaturesOf(board.head.facts) : [],
    [...signaturesIn(model), ...above],
  ];
  for (const level of levels) {
    const inOrder = level.toSorted((a, b) => (a.on < b.on ? -1 : 1));
    const covering = on === undefined ? inOrder.at(-1) : inOrder.find((one) => one.on >= on);
    if (covering) return covering;
  }
  return undefined;
}

/** What the first line of a block of tests says: that they were made, and with which instrument. */
const isOfItself = ({ address: { line } }: Entry): boolean => line === undefined || line.word === "with";

/** A change of what was signed for: nothing that was corrected with its reason, or struck out with one, is one. */
export const breaksRecord = ({ kind, old }: EntryChange): boolean =>
  old !== undefined && (kind === "altered" || kind === "vanished" || kind === "re-dated");

/** Whether an entry says again, or says with its correction, what stood at its address before. */
export const keeps = (now: Entry | undefined, old: Entry): boolean =>
  now !== undefined && (now.meaning === old.meaning || correctionOf(now.fact, old));

const correctionOf = ({ corrections = [] }: Fact, { shown }: Entry): boolean => {
  const tight = (text: string) => text.replace(/\s+/g, "");
  return corrections.some(({ was }) => tight(shown).startsWith(tight(was)));
};
